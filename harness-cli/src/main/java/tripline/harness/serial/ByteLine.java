package tripline.harness.serial;

/** An open line of bytes to a device, both ways. */
public interface ByteLine extends AutoCloseable {
  /** Longest a read waits for a first byte, ms. */
  int READ_WAIT_MS = 100;

  /** The port, as the user named it. */
  String name();

  /**
   * Waits for bytes, at most {@value #READ_WAIT_MS} ms.
   *
   * @return how many came; 0: none yet
   * @throws LineGone if the line is lost or closed
   */
  int read(byte[] into) throws LineGone;

  /**
   * Hands bytes over to be sent; returns before they are.
   *
   * @throws LineGone if the line is lost or closed, or the device has taken nothing for too long
   */
  void write(byte[] bytes, int length) throws LineGone;

  /** Ends the line, and a read under way; a second time does nothing. */
  @Override
  void close();
}
