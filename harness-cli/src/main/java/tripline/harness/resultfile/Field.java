package tripline.harness.resultfile;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import tripline.harness.failure.InputFailure;

/**
 * A place in a result file.
 *
 * <p>What is asked for must be there and of its kind, or {@link InputFailure} names file and place;
 * the {@code optional} ones may be missing or {@code null}, which is how a result says "not known".
 */
public final class Field {
  /** No count, time or travel of a valve comes near it; sums and squares of it stay finite. */
  private static final double MOST = 1e15;

  /** No sheet charts so many contacts, no valve makes so many strokes. */
  private static final int MOST_ELEMENTS = 100_000;

  private final String file;
  private final String place;
  private final JsonNode node;

  private Field(String file, String place, JsonNode node) {
    this.file = file;
    this.place = place;
    this.node = node;
  }

  static Field root(String file, JsonNode node) {
    return new Field(file, "", node);
  }

  /** An object within this one. */
  public Field key(String name) {
    Field field = child(name);
    if (!field.node.isObject()) {
      throw field.wrong("an object");
    }
    return field;
  }

  /** An object within this one, or none. */
  public Optional<Field> optional(String name) {
    return isAbsent(name) ? Optional.empty() : Optional.of(key(name));
  }

  /** The objects of a list within this one. */
  public List<Field> list(String name) {
    Field field = child(name);
    if (!field.node.isArray()) {
      throw field.wrong("a list");
    }
    if (field.node.size() > MOST_ELEMENTS) {
      throw field.wrong("has " + field.node.size() + " elements", "at most " + MOST_ELEMENTS);
    }
    List<Field> all = new ArrayList<>();
    for (JsonNode each : field.node) {
      Field element = new Field(file, field.place + "[" + all.size() + "]", each);
      if (!each.isObject()) {
        throw element.wrong("an object");
      }
      all.add(element);
    }
    return all;
  }

  /** A text. */
  public String text(String name) {
    Field field = child(name);
    if (!field.node.isTextual()) {
      throw field.wrong("a text");
    }
    return field.node.textValue();
  }

  /** A text, or none. */
  public Optional<String> optionalText(String name) {
    return isAbsent(name) ? Optional.empty() : Optional.of(text(name));
  }

  /** A finite number. */
  public double number(String name) {
    Field field = child(name);
    if (!field.node.isNumber()) {
      throw field.wrong("a number");
    }
    double value = field.node.doubleValue();
    if (!(Math.abs(value) <= MOST)) {
      throw field.wrong("is too large a number", "at most 1e15 in size");
    }
    return value;
  }

  /** A finite number, or none. */
  public OptionalDouble optionalNumber(String name) {
    return isAbsent(name) ? OptionalDouble.empty() : OptionalDouble.of(number(name));
  }

  /** A standard uncertainty: a finite number of at least 0. */
  public double uncertainty(String name) {
    double u = number(name);
    if (u < 0) {
      throw child(name).wrong("is negative", "at least 0");
    }
    return u;
  }

  /** A count or index: a whole number of at least 0. */
  public int count(String name) {
    Field field = child(name);
    if (!field.node.isInt() || field.node.intValue() < 0) {
      throw field.wrong("a whole number of at least 0");
    }
    return field.node.intValue();
  }

  /** A truth. */
  public boolean truth(String name) {
    Field field = child(name);
    if (!field.node.isBoolean()) {
      throw field.wrong("true or false");
    }
    return field.node.booleanValue();
  }

  /** One of some words. */
  public <T> T word(String name, T[] choices, Function<T, String> word) {
    String text = text(name);
    List<String> words = new ArrayList<>();
    for (T choice : choices) {
      if (word.apply(choice).equals(text)) {
        return choice;
      }
      words.add("\"" + word.apply(choice) + "\"");
    }
    throw child(name).wrong("is another word", String.join(" or ", words));
  }

  /** Whether a key is missing or null. */
  public boolean isAbsent(String name) {
    JsonNode value = node.path(name);
    return value.isMissingNode() || value.isNull();
  }

  /** The failure of this place to be what it must. */
  public InputFailure wrong(String expected) {
    String what =
        switch (node.getNodeType()) {
          case MISSING -> "is missing";
          case NULL -> "is null";
          case ARRAY -> "is a list";
          case OBJECT, POJO -> "is an object";
          case STRING, BINARY -> "is a text";
          case NUMBER -> "is " + (node.isInt() || node.isDouble() ? node.asText() : "a number");
          case BOOLEAN -> "is " + node.asText();
        };
    return new InputFailure(file, "%s %s, expected %s".formatted(name(), what, expected));
  }

  /** A failure of this place to make sense. */
  public InputFailure wrong(String what, String expected) {
    return new InputFailure(file, "%s %s, expected %s".formatted(name(), what, expected));
  }

  private String name() {
    return place.isEmpty() ? "the result" : place;
  }

  private Field child(String name) {
    return new Field(file, place.isEmpty() ? name : place + "." + name, node.path(name));
  }
}
