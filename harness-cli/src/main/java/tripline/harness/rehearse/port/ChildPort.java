package tripline.harness.rehearse.port;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.util.concurrent.TimeUnit;

/** A port whose device end is the standard input and output of a child process. */
final class ChildPort implements VirtualPort {
  /** Bytes that wait, each way. */
  static final int ROOM = 8192;

  private static final int CHUNK = 2048;
  private static final int ENDS_WITHIN_S = 5;

  private final Process child;
  private final String name;
  private final ByteQueue fromHost = new ByteQueue(ROOM);
  private final ByteQueue toHost = new ByteQueue(ROOM);

  ChildPort(Process child, String name) {
    this.child = child;
    this.name = name;
    daemon("reads " + name, this::readAll);
    daemon("writes " + name, this::writeAll);
  }

  private interface Work {
    void run() throws IOException, InterruptedException;
  }

  /** The stream breaks when the child ends: that is how a port goes, and {@link #alive} tells. */
  private void daemon(String name, Work work) {
    Thread thread =
        new Thread(
            () -> {
              try {
                work.run();
              } catch (IOException e) {
                fromHost.end();
                toHost.end();
              } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
              }
            },
            name);
    thread.setDaemon(true);
    thread.start();
  }

  private void readAll() throws IOException, InterruptedException {
    byte[] chunk = new byte[CHUNK];
    InputStream in = child.getInputStream();
    for (int n = in.read(chunk); n >= 0; n = in.read(chunk)) {
      int put = 0;
      while (put < n && fromHost.awaitRoom()) {
        put += fromHost.put(chunk, put, n - put);
      }
    }
    fromHost.end();
  }

  private void writeAll() throws IOException, InterruptedException {
    byte[] chunk = new byte[CHUNK];
    OutputStream out = child.getOutputStream();
    for (int n = toHost.take(chunk); n >= 0; n = toHost.take(chunk)) {
      out.write(chunk, 0, n);
      out.flush();
    }
  }

  @Override
  public String name() {
    return name;
  }

  @Override
  public int read(byte[] into) {
    return fromHost.poll(into);
  }

  @Override
  public int room() {
    return toHost.room();
  }

  @Override
  public void write(byte[] bytes, int length) {
    toHost.put(bytes, 0, length);
  }

  @Override
  public boolean alive() {
    return child.isAlive() && !fromHost.ended();
  }

  @Override
  public void close() {
    fromHost.end();
    toHost.end();
    child.destroy();
    try {
      if (!child.waitFor(ENDS_WITHIN_S, TimeUnit.SECONDS)) {
        child.destroyForcibly();
      }
    } catch (InterruptedException e) {
      child.destroyForcibly();
      Thread.currentThread().interrupt();
    }
  }
}
