package org.castwright.web;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.sun.net.httpserver.HttpExchange;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.castwright.coupon.CouponOptions;
import org.castwright.mesh.MeshException;
import org.castwright.pipeline.Comparison;
import org.castwright.pipeline.CouponFolder;
import org.castwright.pipeline.Json;
import org.castwright.plan.PrintProcess;

/** Calls that put jobs in order, and those for coupons. */
final class ShelfCalls {

  private final Shelf shelf;
  private final Line line;
  private final Maker maker;
  private final Limits limits;
  private final ViewMeshes views;

  ShelfCalls(Shelf shelf, Line line, Maker maker, Limits limits) {
    this.shelf = shelf;
    this.line = line;
    this.maker = maker;
    this.limits = limits;
    views = new ViewMeshes(shelf);
  }

  List<Route> routes() {
    return List.of(
        new Route("GET", "/api/jobs/{job}/view", (x, p) -> views.job(x, p.get("job"))),
        new Route("POST", "/api/jobs/{job}/name", this::rename),
        new Route("POST", "/api/jobs/{job}/copy", this::copy),
        new Route("GET", "/api/compare", this::compare),
        new Route("GET", "/api/bin", this::bin),
        new Route("POST", "/api/bin/{job}/restore", this::restore),
        new Route("POST", "/api/coupons", this::coupon),
        new Route("GET", "/api/coupons/{coupon}/files/{path}", this::couponFile),
        new Route("GET", "/api/coupons/{coupon}/zip", this::couponZip));
  }

  /** A name, sent or told. */
  record Named(String name) {}

  private String wanted(HttpExchange x) throws IOException {
    try {
      Named n = Json.read(Ask.text(x, limits.jsonBytes()), Named.class);
      if (n == null || n.name() == null || n.name().isBlank()) {
        throw new Refused(400, "Say the name that is wanted.");
      }
      return n.name();
    } catch (JsonProcessingException e) {
      throw new Refused(400, "Say the name that is wanted.");
    }
  }

  private void rename(HttpExchange x, Map<String, String> parts) throws IOException {
    String old = parts.get("job");
    String name = shelf.rename(old, wanted(x));
    line.forget(old);
    line.forget(name);
    Reply.json(x, 200, new Named(name));
  }

  private void copy(HttpExchange x, Map<String, String> parts) throws IOException {
    String name = shelf.copy(parts.get("job"), wanted(x));
    line.forget(name);
    Reply.json(x, 201, new Named(name));
  }

  private void compare(HttpExchange x, Map<String, String> parts) throws IOException {
    Map<String, String> q = Ask.query(x);
    Path a = shelf.job(q.getOrDefault("a", ""));
    Path b = shelf.job(q.getOrDefault("b", ""));
    try {
      Reply.json(x, 200, Comparison.of(a, b));
    } catch (MeshException e) {
      throw new Refused(422, "One of the two is no finished mold.");
    }
  }

  private void bin(HttpExchange x, Map<String, String> parts) throws IOException {
    List<Named> out = new ArrayList<>();
    shelf.bin().forEach(n -> out.add(new Named(n)));
    Reply.json(x, 200, out);
  }

  private void restore(HttpExchange x, Map<String, String> parts) throws IOException {
    String name = shelf.restore(parts.get("job"));
    line.forget(name);
    Reply.json(x, 200, new Named(name));
  }

  /** What is sent to have coupons made; null for the usual. */
  record Wanted(String process, List<Double> gapsMm) {}

  /** Coupons that were made. */
  record Made(String name, CouponFolder.Written coupon) {}

  private void coupon(HttpExchange x, Map<String, String> parts) throws IOException {
    try {
      Wanted w = Json.read(Ask.text(x, limits.jsonBytes()), Wanted.class);
      boolean resin = w != null && "resin".equals(w.process());
      CouponOptions o = CouponOptions.of(resin ? PrintProcess.RESIN : PrintProcess.FDM);
      if (w != null && w.gapsMm() != null) {
        o = o.withGapsMm(w.gapsMm());
      }
      // the same wish gives the same bytes, so it may take the place of an earlier one
      String name = o.process().name().toLowerCase(Locale.ROOT);
      CouponFolder.Written made =
          maker.coupon(o, shelf.root().resolve(Shelf.COUPONS).resolve(name));
      Reply.json(x, 201, new Made(name, made));
    } catch (JsonProcessingException | IllegalArgumentException e) {
      throw new Refused(
          400,
          e instanceof IllegalArgumentException
              ? e.getMessage()
              : "Coupons are asked for by one JSON object with process and gaps_mm.");
    }
  }

  private void couponFile(HttpExchange x, Map<String, String> parts) throws IOException {
    Reply.file(x, shelf.couponFile(parts.get("coupon"), parts.get("path")));
  }

  private void couponZip(HttpExchange x, Map<String, String> parts) throws IOException {
    Reply.zip(x, shelf.coupon(parts.get("coupon")));
  }
}
