package tripline.harness.capture;

import java.io.IOException;

/** Where the bytes of a capture go. */
interface Disk {
  /**
   * Hands bytes to the system, all of them.
   *
   * @throws IOException if not all were taken; what was taken stays
   */
  void write(byte[] bytes, int length) throws IOException;

  /** Returns when what was handed over would outlast a power failure. */
  void force() throws IOException;

  /** Ends it. */
  void close() throws IOException;
}
