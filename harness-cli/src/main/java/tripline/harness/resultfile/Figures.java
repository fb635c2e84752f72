package tripline.harness.resultfile;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import tripline.result.Result.Measured;
import tripline.result.Result.PartResult;

/** Figures with their uncertainty, read back. */
final class Figures {
  /** Nine digits are written of each. */
  private static final double ROUNDING = 1e-6;

  private Figures() {}

  /** A figure under a key, or none. */
  static @Nullable Measured optional(Field field, String key) {
    return field.optional(key).map(f -> of(f, "value")).orElse(null);
  }

  /** A figure whose value may be missing, which stands beside its uncertainty. */
  static @Nullable Measured beside(Field field, String value) {
    return field.isAbsent(value) ? null : of(field, value);
  }

  /**
   * A figure with the parts of its uncertainty.
   *
   * @throws tripline.harness.failure.InputFailure if the parts do not make up the uncertainty
   */
  static Measured of(Field field, String value) {
    double u = field.uncertainty("u");
    List<PartResult> parts = new ArrayList<>();
    double squares = 0;
    for (Field part : field.list("parts")) {
      double each = part.uncertainty("u");
      squares += each * each;
      parts.add(new PartResult(part.text("name"), each, part.text("shape")));
    }
    if (Math.abs(Math.sqrt(squares) - u) > ROUNDING * u) {
      throw field.wrong("has parts that do not make up its u", "the root of their squares");
    }
    return new Measured(field.number(value), u, field.uncertainty("u95"), List.copyOf(parts));
  }

  static @Nullable Double number(Field field, String key) {
    OptionalDouble number = field.optionalNumber(key);
    return number.isPresent() ? number.getAsDouble() : null;
  }
}
