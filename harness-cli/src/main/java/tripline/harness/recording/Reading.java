package tripline.harness.recording;

import java.util.Optional;
import java.util.function.Supplier;
import tripline.harness.failure.InputFailure;

/** A recording file on its way through the reader of its format. */
interface Reading {
  /** Takes the next bytes; whether more is wanted. */
  boolean onBytes(byte[] bytes, int length);

  /**
   * The file was read to its end, or as far as it was wanted.
   *
   * @param sha256 digest of the file, asked for when all else is done; an empty text where none was
   *     taken; empty where it was not read to its end
   * @throws InputFailure if it cannot be used
   */
  RecordingFile finish(Optional<Supplier<String>> sha256);
}
