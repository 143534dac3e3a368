package org.castwright.pipeline;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.deser.std.StdDeserializer;
import com.fasterxml.jackson.databind.module.SimpleModule;
import java.io.IOException;
import org.castwright.trial.Note;

/** Measured lengths, whose axis may be left out. */
final class TrialModule extends SimpleModule {

  private static final long serialVersionUID = 1;

  TrialModule() {
    addDeserializer(Note.Length.class, new Reader());
  }

  private static final class Reader extends StdDeserializer<Note.Length> {

    private static final long serialVersionUID = 1;

    Reader() {
      super(Note.Length.class);
    }

    @Override
    public Note.Length deserialize(JsonParser in, DeserializationContext context)
        throws IOException {
      JsonNode tree = in.readValueAsTree();
      JsonNode wanted = tree.path("wanted_mm");
      JsonNode got = tree.path("got_mm");
      JsonNode axis = tree.path("axis");
      boolean told = !axis.isMissingNode() && !axis.isNull();
      if (!wanted.isNumber() || !got.isNumber() || (told && !axis.isTextual())) {
        return context.reportInputMismatch(
            Note.Length.class, "a length has wanted_mm, got_mm and maybe an axis");
      }
      return new Note.Length(
          wanted.doubleValue(), got.doubleValue(), told ? axis.textValue() : null);
    }
  }
}
