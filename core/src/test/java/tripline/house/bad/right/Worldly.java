package tripline.house.bad.right;

import java.io.File;
import java.net.Socket;
import java.nio.file.Path;
import java.time.Instant;
import java.util.concurrent.atomic.AtomicLong;

/** Each nested class does one thing that core may not. */
public final class Worldly {
  private Worldly() {}

  record OnDisk(File file) {}

  record OnNewDisk(Path path) {}

  record OnNet(Socket socket) {}

  record Shared(AtomicLong counter) {}

  static final class Threaded {
    static void run() {
      Thread.onSpinWait();
    }
  }

  static final class Timed {
    static long ns() {
      return System.nanoTime();
    }
  }

  static final class Dated {
    static Instant today() {
      return Instant.now();
    }
  }

  static final class Printing {
    static void print() {
      System.out.println("loose");
    }
  }

  static final class Lucky {
    static double draw() {
      return Math.random();
    }
  }
}
