package tripline.harness.failure;

import java.util.List;
import java.util.stream.Collectors;

/** An input cannot be used: exit status 4, one line for each error. */
public final class InputFailure extends RuntimeException {
  private final List<InputError> errors;

  /**
   * All that is wrong with the input, in the order to be printed.
   *
   * @throws IllegalArgumentException if there is nothing wrong
   */
  public InputFailure(List<InputError> errors) {
    super(errors.stream().map(InputError::toString).collect(Collectors.joining("\n")));
    if (errors.isEmpty()) {
      throw new IllegalArgumentException("a failure without an error");
    }
    this.errors = List.copyOf(errors);
  }

  /** One error, at a line and column counted from 1. */
  public InputFailure(String file, long line, long column, String problem) {
    this(List.of(new InputError(file, line, column, problem)));
  }

  /** One error that concerns the whole file. */
  public InputFailure(String file, String problem) {
    this(List.of(new InputError(file, problem)));
  }

  /** At least one error, in the order to be printed. */
  public List<InputError> errors() {
    return errors;
  }
}
