package tripline.harness.capture;

/** Sees the bytes of a capture once they are written, record by record. */
@FunctionalInterface
public interface Onlooker {
  /** Looks away. */
  Onlooker NONE = (bytes, length) -> {};

  /** Bytes of the file; they hold only during the call. */
  void onBytes(byte[] bytes, int length);
}
