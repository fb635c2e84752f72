package tripline.harness.failure;

import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;

/** An answer could not be written where it was wanted: exit status 6. */
public final class OutputFailure extends RuntimeException {
  /** States the file (or stream) and why it refused, on one line. */
  public OutputFailure(String file, String problem) {
    super(file + ": " + problem);
  }

  /** States why writing a file (or stream) failed, in words that name no other file. */
  public static OutputFailure of(String file, Exception cause) {
    return new OutputFailure(file, "could not be written: " + why(cause));
  }

  private static String why(Exception e) {
    if (e instanceof NoSuchFileException) {
      return "there is no such folder";
    }
    if (e instanceof AccessDeniedException) {
      return "that is not permitted";
    }
    if (e instanceof FileSystemException system && system.getReason() != null) {
      return system.getReason();
    }
    return e.getMessage() == null ? e.getClass().getSimpleName() : e.getMessage();
  }
}
