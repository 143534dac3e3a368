package org.castwright.web;

import com.sun.net.httpserver.Headers;
import com.sun.net.httpserver.HttpExchange;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.List;
import java.util.Set;

/**
 * Lets in only the page of this very start. A page elsewhere on the web may make the browser call
 * this machine; it is told apart by the Host it must name (RFC 9110, section 7.2), by the Origin
 * the browser adds (RFC 6454), and by not knowing the token.
 */
final class Guard {

  private static final int TOKEN_BYTES = 32;

  private final String token;
  private final int port;

  Guard(int port) {
    byte[] bytes = new byte[TOKEN_BYTES];
    new SecureRandom().nextBytes(bytes);
    token = Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
    this.port = port;
  }

  String token() {
    return token;
  }

  private Set<String> hosts() {
    return Set.of("127.0.0.1:" + port, "localhost:" + port, "[::1]:" + port);
  }

  /**
   * Checks where a request comes from.
   *
   * @throws Refused unless it names this server and comes from its own page or from no page
   */
  void checkOrigin(HttpExchange x) {
    Headers h = x.getRequestHeaders();
    List<String> host = h.getOrDefault("Host", List.of());
    if (host.size() != 1 || !hosts().contains(host.get(0))) {
      throw new Refused(421, "This server answers to its own address only.");
    }
    for (String origin : h.getOrDefault("Origin", List.of())) {
      if (!origin.equals("http://" + host.get(0))) {
        throw new Refused(403, "Requests from other pages are not served.");
      }
    }
    String site = h.getFirst("Sec-Fetch-Site");
    if (site != null && !site.equals("same-origin") && !site.equals("none")) {
      throw new Refused(403, "Requests from other pages are not served.");
    }
  }

  /**
   * Checks that the token comes along, as a cookie or as {@code Authorization: Bearer}.
   *
   * @throws Refused unless it does
   */
  void checkToken(HttpExchange x) {
    Headers h = x.getRequestHeaders();
    String bearer = h.getFirst("Authorization");
    if (bearer != null && bearer.startsWith("Bearer ") && same(bearer.substring(7))) {
      return;
    }
    for (String line : h.getOrDefault("Cookie", List.of())) {
      for (String cookie : line.split(";", -1)) {
        String[] pair = cookie.trim().split("=", 2);
        if (pair.length == 2 && pair[0].equals(cookieName()) && same(pair[1])) {
          return;
        }
      }
    }
    throw new Refused(
        401, "The token of this start is missing: open the address that castwright serve printed.");
  }

  /** Compares in the same time wherever they differ. */
  boolean same(String given) {
    return MessageDigest.isEqual(
        given.getBytes(StandardCharsets.UTF_8), token.getBytes(StandardCharsets.UTF_8));
  }

  /** Browsers share cookies between the ports of a host, so the port is in the name. */
  private String cookieName() {
    return "castwright-" + port;
  }

  String cookie() {
    return cookieName() + "=" + token + "; HttpOnly; SameSite=Strict; Path=/";
  }
}
