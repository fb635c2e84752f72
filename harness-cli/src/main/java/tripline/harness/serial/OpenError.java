package tripline.harness.serial;

import java.util.Locale;

/** Words for the number the system gives when a port does not open. */
final class OpenError {
  private static final int ENOENT = 2;
  private static final int EIO = 5;
  private static final int EAGAIN = 11;
  private static final int EACCES = 13;
  private static final int EBUSY = 16;
  private static final int EISDIR = 21;
  private static final int ENOTTY = 25;
  private static final int EAGAIN_BSD = 35;
  private static final int WINDOWS_NOT_FOUND = 2;
  private static final int WINDOWS_ACCESS_DENIED = 5;

  private OpenError() {}

  /** What is wrong and what was expected, of the system this runs on. */
  static String words(int code) {
    String system = System.getProperty("os.name", "").toLowerCase(Locale.ROOT);
    return system.startsWith("windows") ? ofWindows(code) : ofUnix(code);
  }

  /** Numbers of Linux and macOS; the lock another program holds shows as EAGAIN. */
  static String ofUnix(int code) {
    return switch (code) {
      case EACCES ->
          "may not be opened, expected the right to read and write it (on Linux that of the device's"
              + " group, often dialout)";
      case EAGAIN, EBUSY, EAGAIN_BSD -> "is in use by another program";
      // The library's answer to a second opening in one process, too.
      case ENOENT -> "is open already, or was unplugged just now";
      case EIO -> "is unplugged at its other end";
      case ENOTTY, EISDIR -> "is no serial port";
      default -> other(code);
    };
  }

  /** Numbers of the Windows API, from its documentation; not tried. */
  static String ofWindows(int code) {
    return switch (code) {
      case WINDOWS_NOT_FOUND -> "no such port; `tripline ports` lists those present";
      case WINDOWS_ACCESS_DENIED -> "is in use by another program, or may not be opened";
      default -> other(code);
    };
  }

  private static String other(int code) {
    return "cannot be opened as a serial port (error " + code + ")";
  }
}
