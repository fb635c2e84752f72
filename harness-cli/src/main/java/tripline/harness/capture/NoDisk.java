package tripline.harness.capture;

/** Where the bytes of a capture go that nobody wants to keep. */
final class NoDisk implements Disk {
  @Override
  public void write(byte[] bytes, int length) {}

  @Override
  public void force() {}

  @Override
  public void close() {}
}
