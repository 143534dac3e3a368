package org.castwright.pipeline;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.deser.std.StdDeserializer;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.databind.ser.std.StdSerializer;
import java.io.IOException;
import org.castwright.geom.Vec3;
import org.castwright.seams.Mark;
import org.castwright.seams.Region;
import org.castwright.seams.Wish;
import org.castwright.seams.Wishes;

/** Wishes within other files, in the format of {@link WishesFile}. */
final class WishesModule extends SimpleModule {

  private static final long serialVersionUID = 1;

  WishesModule() {
    addSerializer(Wishes.class, new Writer());
    addDeserializer(Wishes.class, new Reader());
  }

  /** Writes what {@link WishesFile} reads. */
  private static final class Writer extends StdSerializer<Wishes> {

    private static final long serialVersionUID = 1;

    Writer() {
      super(Wishes.class);
    }

    @Override
    public void serialize(Wishes wishes, JsonGenerator out, SerializerProvider p)
        throws IOException {
      out.writeStartObject();
      out.writeNumberField("version", WishesFile.VERSION);
      out.writeArrayFieldStart("wishes");
      for (Wish w : wishes.all()) {
        out.writeStartObject();
        out.writeStringField("mark", name(w.mark()));
        if (w.piece() > 0) {
          out.writeNumberField("piece", w.piece());
        }
        region(w.region(), out);
        out.writeEndObject();
      }
      out.writeEndArray();
      out.writeEndObject();
    }

    private static String name(Mark mark) {
      return switch (mark) {
        case NO_SEAM -> "no-seam";
        case HIDE -> "hide";
        case SHOW -> "show";
        case PIECE -> "piece";
      };
    }

    private static void region(Region region, JsonGenerator out) throws IOException {
      if (region instanceof Region.Box b) {
        out.writeObjectFieldStart("box");
        point("min", b.min(), out);
        point("max", b.max(), out);
        out.writeEndObject();
      } else if (region instanceof Region.Ball b) {
        out.writeObjectFieldStart("sphere");
        point("center", b.center(), out);
        out.writeNumberField("radius", b.radius());
        out.writeEndObject();
      } else if (region instanceof Region.Painted p) {
        out.writeFieldName("facets");
        int[] facets = p.facets();
        out.writeArray(facets, 0, facets.length);
      } else {
        throw new IllegalArgumentException("only regions in the model's frame are written");
      }
    }

    private static void point(String name, Vec3 p, JsonGenerator out) throws IOException {
      out.writeFieldName(name);
      out.writeArray(new double[] {p.x(), p.y(), p.z()}, 0, 3);
    }
  }

  /** Reads the same. */
  private static final class Reader extends StdDeserializer<Wishes> {

    private static final long serialVersionUID = 1;

    Reader() {
      super(Wishes.class);
    }

    @Override
    public Wishes deserialize(JsonParser p, DeserializationContext c) throws IOException {
      return WishesFile.parse(p.<JsonNode>readValueAsTree(), "the job's wishes");
    }
  }
}
