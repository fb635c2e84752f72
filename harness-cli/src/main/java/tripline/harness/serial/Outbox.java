package tripline.harness.serial;

import java.util.Arrays;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.function.LongSupplier;

/** Bytes that wait to be sent, and the daemon thread that sends them. */
final class Outbox {
  static final int MOST_WAITING = 64;

  /** Longest a write may take: a frame of 519 bytes takes 4.3 s at 1200 baud. */
  static final long STUCK_NS = 6_000_000_000L;

  private static final byte[] END = new byte[0];

  /** Sends bytes, and returns when the system has taken them. */
  interface Device {
    /** Whether all of them were taken. */
    boolean write(byte[] bytes);
  }

  private final Device device;
  private final LongSupplier nanoTime;
  private final BlockingQueue<byte[]> waiting = new ArrayBlockingQueue<>(MOST_WAITING);
  private volatile boolean failed;
  private volatile boolean writing;
  private volatile long sinceNs;

  Outbox(String name, Device device, LongSupplier nanoTime) {
    this.device = device;
    this.nanoTime = nanoTime;
    Thread writer = new Thread(this::run, "writes to " + name);
    writer.setDaemon(true);
    writer.start();
  }

  /** Whether the bytes will be tried; not if too many wait already. */
  boolean put(byte[] bytes, int length) {
    return length == 0 || waiting.offer(Arrays.copyOf(bytes, length));
  }

  /** Whether the device refused bytes, or has been taking one write for too long. */
  boolean stuck() {
    return failed || (writing && nanoTime.getAsLong() - sinceNs > STUCK_NS);
  }

  /** Lets the thread end, if it is not caught in a write. */
  void end() {
    waiting.clear();
    waiting.offer(END);
  }

  private void run() {
    try {
      for (byte[] next = waiting.take(); next != END && !failed; next = waiting.take()) {
        sinceNs = nanoTime.getAsLong();
        writing = true;
        failed = !device.write(next);
        writing = false;
      }
    } catch (InterruptedException e) {
      failed = true;
      Thread.currentThread().interrupt();
    }
  }
}
