package tripline.harness.capture;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/** A new file. */
final class FileDisk implements Disk {
  private final FileChannel channel;

  /**
   * Makes the file.
   *
   * @throws java.nio.file.FileAlreadyExistsException if there is something of that name
   */
  FileDisk(Path path) throws IOException {
    channel = FileChannel.open(path, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
  }

  @Override
  public void write(byte[] bytes, int length) throws IOException {
    ByteBuffer rest = ByteBuffer.wrap(bytes, 0, length);
    while (rest.hasRemaining()) {
      channel.write(rest);
    }
  }

  @Override
  public void force() throws IOException {
    channel.force(false);
  }

  @Override
  public void close() throws IOException {
    channel.close();
  }
}
