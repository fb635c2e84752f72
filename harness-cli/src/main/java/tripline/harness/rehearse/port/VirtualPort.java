package tripline.harness.rehearse.port;

/** The device's end of a serial line. None of its methods waits. */
public interface VirtualPort extends AutoCloseable {
  /** What a host opens. */
  String name();

  /** Takes what the host has sent; 0 if nothing. */
  int read(byte[] into);

  /** How many bytes can be written now. */
  int room();

  /** Sends bytes, at most {@link #room} of them. */
  void write(byte[] bytes, int length);

  /** Whether it is still there. */
  boolean alive();

  /** Unplugs it; a second time does nothing. */
  @Override
  void close();

  /** Makes a port under the same name, as often as asked. */
  interface Maker {
    /** A new port, ready to be opened by a host. */
    VirtualPort make();
  }
}
