package tripline.harness.serial;

import com.sun.jna.Native;
import com.sun.jna.Platform;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Assumptions;

/**
 * A serial device without hardware: a pseudo terminal whose other end is the device. Closing it is
 * a clean unplug. Linux only; numbers of calls and flags are from its headers ({@code fcntl.h},
 * {@code asm-generic/termbits.h}, {@code poll.h}).
 */
public final class Pty implements AutoCloseable {
  private static final int O_RDWR = 2;
  private static final int O_NOCTTY = 0x100;
  private static final short POLLIN = 1;
  private static final int TERMIOS_BYTES = 60;

  /** The C library, called without marshalling objects: several MB a second pass here. */
  private static final class C {
    static {
      Native.register(C.class, "c");
    }

    static native int posix_openpt(int flags);

    static native int grantpt(int fd);

    static native int unlockpt(int fd);

    static native int ptsname_r(int fd, byte[] name, long room);

    static native int tcgetattr(int fd, byte[] termios);

    static native void cfmakeraw(byte[] termios);

    static native int tcsetattr(int fd, int when, byte[] termios);

    static native long read(int fd, byte[] into, long most);

    static native long write(int fd, byte[] from, long length);

    static native int poll(byte[] fds, long count, int timeoutMs);

    static native int close(int fd);
  }

  private final int master;
  private final String path;
  private boolean closed;

  private Pty(int master, String path) {
    this.master = master;
    this.path = path;
  }

  /** A new device; skips the running test where there are none, or fails it if all is required. */
  public static Pty open() {
    if (!Platform.isLinux()) {
      if (System.getProperty("tripline.require", "").equals("all")) {
        Assertions.fail("pseudo terminals are required by -Dtripline.require=all");
      }
      Assumptions.abort("pseudo terminals are only made on Linux here");
    }
    int master = checked(C.posix_openpt(O_RDWR | O_NOCTTY), "posix_openpt");
    checked(C.grantpt(master), "grantpt");
    checked(C.unlockpt(master), "unlockpt");
    byte[] name = new byte[128];
    checked(-Math.abs(C.ptsname_r(master, name, name.length)), "ptsname");
    byte[] termios = new byte[TERMIOS_BYTES];
    checked(C.tcgetattr(master, termios), "tcgetattr");
    C.cfmakeraw(termios);
    checked(C.tcsetattr(master, 0, termios), "tcsetattr");
    return new Pty(master, Native.toString(name));
  }

  /** A new device under a name of one's choice, in place of the one that had it. */
  public static Pty open(Path link) throws IOException {
    Pty pty = open();
    Path fresh = link.resolveSibling(link.getFileName() + ".new");
    Files.deleteIfExists(fresh);
    Files.createSymbolicLink(fresh, Path.of(pty.path));
    Files.move(fresh, link, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
    return pty;
  }

  private static int checked(int result, String call) {
    if (result < 0) {
      throw new IllegalStateException(call + " failed, error " + Native.getLastError());
    }
    return result;
  }

  /** Its path as a serial port. */
  public String path() {
    return path;
  }

  /** Writes all, waiting for the host to read: as the device would send it. */
  public void write(byte[] bytes, int offset, int length) throws IOException {
    int at = offset;
    while (at < offset + length) {
      byte[] rest = java.util.Arrays.copyOfRange(bytes, at, Math.min(offset + length, at + 4096));
      long wrote = C.write(master, rest, rest.length);
      if (wrote < 0) {
        throw new IOException("write: error " + Native.getLastError());
      }
      at += (int) wrote;
    }
  }

  /** Writes all. */
  public void write(byte[] bytes) throws IOException {
    write(bytes, 0, bytes.length);
  }

  /** Writes ASCII. */
  public void write(String text) throws IOException {
    write(text.getBytes(StandardCharsets.US_ASCII));
  }

  /**
   * What the host has sent, waiting for it so long.
   *
   * @return bytes read, 0 if none came, -1 while no host has the port open
   */
  public int read(byte[] into, int timeoutMs) {
    byte[] fds = {(byte) master, (byte) (master >> 8), 0, 0, POLLIN, 0, 0, 0};
    int ready = C.poll(fds, 1, timeoutMs);
    if (ready <= 0) {
      return 0;
    }
    return (int) C.read(master, into, into.length);
  }

  /** Unplugs it. */
  @Override
  public void close() {
    if (!closed) {
      closed = true;
      C.close(master);
    }
  }
}
