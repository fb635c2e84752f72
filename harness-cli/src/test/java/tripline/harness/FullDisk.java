package tripline.harness;

import java.io.IOException;
import java.io.Writer;

/** Takes nothing. */
final class FullDisk extends Writer {
  @Override
  public void write(char[] text, int from, int length) throws IOException {
    throw new IOException("No space left on device");
  }

  @Override
  public void flush() {}

  @Override
  public void close() {}
}
