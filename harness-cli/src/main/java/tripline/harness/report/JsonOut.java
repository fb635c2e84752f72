package tripline.harness.report;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.StreamWriteFeature;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.core.util.Separators;
import java.io.IOException;
import java.io.Writer;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tripline.measure.Decision;
import tripline.result.Result.Measured;
import tripline.result.Result.PartResult;

/** Fields of the result file, one call each. */
final class JsonOut {
  private final JsonGenerator g;

  JsonOut(JsonGenerator generator) {
    this.g = generator;
  }

  /** A generator of readable JSON that leaves its writer open. */
  static JsonGenerator generator(Writer out) throws IOException {
    JsonFactory factory =
        JsonFactory.builder().disable(StreamWriteFeature.AUTO_CLOSE_TARGET).build();
    DefaultPrettyPrinter printer =
        new DefaultPrettyPrinter()
            .withSeparators(
                Separators.createDefaultInstance()
                    .withObjectFieldValueSpacing(Separators.Spacing.AFTER));
    printer.indentObjectsWith(new DefaultIndenter("  ", "\n"));
    JsonGenerator generator = factory.createGenerator(out);
    generator.setPrettyPrinter(printer);
    return generator;
  }

  /** Writes the fields of one object. */
  interface Fields<T> {
    void write(T value, JsonOut out) throws IOException;
  }

  void open() throws IOException {
    g.writeStartObject();
  }

  void open(String key) throws IOException {
    g.writeObjectFieldStart(key);
  }

  void close() throws IOException {
    g.writeEndObject();
  }

  void text(String key, @Nullable String value) throws IOException {
    if (value == null) {
      g.writeNullField(key);
    } else {
      g.writeStringField(key, value);
    }
  }

  void truth(String key, boolean value) throws IOException {
    g.writeBooleanField(key, value);
  }

  void decision(String key, @Nullable Decision value) throws IOException {
    text(key, value == null ? null : value.name().toLowerCase(Locale.ROOT));
  }

  void number(String key, long value) throws IOException {
    g.writeNumberField(key, value);
  }

  void number(String key, @Nullable Integer value) throws IOException {
    if (value == null) {
      g.writeNullField(key);
    } else {
      g.writeNumberField(key, value);
    }
  }

  void whole(String key, @Nullable Long value) throws IOException {
    if (value == null) {
      g.writeNullField(key);
    } else {
      g.writeNumberField(key, value);
    }
  }

  void number(String key, @Nullable Double value) throws IOException {
    g.writeFieldName(key);
    figure(value);
  }

  /** A figure, or null where there is none; what is no number is no figure. */
  private void figure(@Nullable Double value) throws IOException {
    if (value == null || !Double.isFinite(value)) {
      g.writeNull();
    } else {
      g.writeNumber(JsonNumber.of(value));
    }
  }

  void numbers(String key, double[] values) throws IOException {
    g.writeArrayFieldStart(key);
    for (double value : values) {
      figure(value);
    }
    g.writeEndArray();
  }

  <T> void list(String key, List<T> values, Fields<T> fields) throws IOException {
    g.writeArrayFieldStart(key);
    for (T value : values) {
      g.writeStartObject();
      fields.write(value, this);
      g.writeEndObject();
    }
    g.writeEndArray();
  }

  <T> void object(String key, @Nullable T value, Fields<T> fields) throws IOException {
    if (value == null) {
      g.writeNullField(key);
    } else {
      open(key);
      fields.write(value, this);
      close();
    }
  }

  /** A figure with its uncertainty and the parts it comes from. */
  void measured(String key, @Nullable Measured value) throws IOException {
    object(
        key,
        value,
        (m, out) -> {
          out.number("value", m.value());
          out.number("u", m.u());
          out.number("u95", m.u95());
          out.parts(m);
        });
  }

  /** What an uncertainty is made of; the figure itself stands beside it. */
  void parts(@Nullable Measured value) throws IOException {
    partList("parts", value == null ? List.of() : value.parts());
  }

  /** Parts under a name of their own. */
  void partList(String key, List<PartResult> parts) throws IOException {
    list(key, parts, JsonOut::part);
  }

  private static void part(PartResult part, JsonOut out) throws IOException {
    out.text("name", part.name());
    out.number("u", part.u());
    out.text("shape", part.shape());
  }

  /** Evidence: numbers, texts, truths, and lists and maps of them; anything else as its text. */
  void any(String key, @Nullable Object value) throws IOException {
    g.writeFieldName(key);
    any(value);
  }

  private void any(@Nullable Object value) throws IOException {
    if (value == null) {
      g.writeNull();
    } else if (value instanceof Integer || value instanceof Long) {
      g.writeNumber(((Number) value).longValue());
    } else if (value instanceof Number number) {
      figure(number.doubleValue());
    } else if (value instanceof Boolean truth) {
      g.writeBoolean(truth);
    } else if (value instanceof Decision decision) {
      g.writeString(decision.name().toLowerCase(Locale.ROOT));
    } else if (value instanceof Iterable<?> values) {
      g.writeStartArray();
      for (Object each : values) {
        any(each);
      }
      g.writeEndArray();
    } else if (value instanceof Map<?, ?> map) {
      g.writeStartObject();
      for (Map.Entry<?, ?> entry : map.entrySet()) {
        any(String.valueOf(entry.getKey()), entry.getValue());
      }
      g.writeEndObject();
    } else {
      g.writeString(value.toString());
    }
  }
}
