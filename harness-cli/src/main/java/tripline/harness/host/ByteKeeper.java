package tripline.harness.host;

/** Keeps what is received, before it is decoded (SPEC H5). */
@FunctionalInterface
public interface ByteKeeper {
  /** Keeps nothing. */
  ByteKeeper NONE = (bytes, length) -> {};

  /** Bytes as they came. */
  void onBytes(byte[] bytes, int length);
}
