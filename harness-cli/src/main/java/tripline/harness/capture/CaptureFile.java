package tripline.harness.capture;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Locale;
import java.util.function.LongSupplier;
import org.jspecify.annotations.Nullable;
import tripline.capture.CaptureBegin;
import tripline.capture.CaptureEncoder;
import tripline.capture.CaptureEnd;
import tripline.capture.CaptureFormat;
import tripline.capture.HostMark;
import tripline.capture.LineChange;
import tripline.harness.failure.OutputFailure;

/**
 * A capture that grows on disk. Each record is handed to the system in one write as soon as there
 * is one, so that the death of this program costs nothing that was received; twice a second the
 * system is asked to put it on the disk, for the death of the machine.
 */
public final class CaptureFile implements AutoCloseable {
  private static final long FORCE_MS = 500;

  private final String name;
  private final @Nullable Path path;
  private final Disk disk;
  private final Onlooker onlooker;
  private final LongSupplier nanoTime;
  private final long startNs;
  private final CaptureEncoder encoder = new CaptureEncoder();
  private final Object forcing = new Object();
  private volatile boolean unforced;
  private volatile @Nullable IOException failure;
  private volatile boolean closed;
  private long goodMicros;

  private CaptureFile(
      String name,
      @Nullable Path path,
      Disk disk,
      CaptureBegin begin,
      LongSupplier nanoTime,
      Onlooker onlooker) {
    this.name = name;
    this.path = path;
    this.disk = disk;
    this.onlooker = onlooker;
    this.nanoTime = nanoTime;
    this.startNs = nanoTime.getAsLong();
    encoder.begin(begin);
    write();
    Thread forcer = new Thread(this::force, "capture to disk");
    forcer.setDaemon(true);
    forcer.start();
  }

  /**
   * Makes a new file with its first record.
   *
   * @param nanoTime a clock that never steps, ns
   * @throws OutputFailure if there is something of that name already, or it cannot be made
   */
  public static CaptureFile create(Path path, CaptureBegin begin, LongSupplier nanoTime) {
    return create(path, begin, nanoTime, Onlooker.NONE);
  }

  /** As above, with somebody who looks on. */
  public static CaptureFile create(
      Path path, CaptureBegin begin, LongSupplier nanoTime, Onlooker onlooker) {
    String name = path.toString();
    try {
      return new CaptureFile(name, path, new FileDisk(path), begin, nanoTime, onlooker);
    } catch (FileAlreadyExistsException e) {
      throw new OutputFailure(name, "is there already, expected the name of a new file");
    } catch (NoSuchFileException e) {
      throw new OutputFailure(name, "cannot be made: there is no such folder");
    } catch (AccessDeniedException e) {
      throw new OutputFailure(name, "cannot be made: the folder may not be written");
    } catch (IOException e) {
      throw new OutputFailure(name, "cannot be made: " + e.getMessage());
    }
  }

  /** A capture that is looked at and not kept. */
  public static CaptureFile unkept(CaptureBegin begin, LongSupplier nanoTime, Onlooker onlooker) {
    return new CaptureFile("capture", null, new NoDisk(), begin, nanoTime, onlooker);
  }

  static CaptureFile on(Disk disk, CaptureBegin begin, LongSupplier nanoTime) {
    return new CaptureFile("capture", null, disk, begin, nanoTime, Onlooker.NONE);
  }

  /** Host's time since the capture began, microseconds. */
  public long elapsedMicros() {
    return (nanoTime.getAsLong() - startNs) / 1000;
  }

  /** Bytes of the logger kept so far. */
  public long receivedBytes() {
    return encoder.receivedBytes();
  }

  /** Keeps bytes of the logger. */
  public void received(byte[] bytes, int length) {
    for (int at = 0; at < length; at += CaptureFormat.MOST_DATA) {
      encoder.received(elapsedMicros(), bytes, at, Math.min(CaptureFormat.MOST_DATA, length - at));
      write();
    }
  }

  /** Keeps that the line was opened, lost or closed. */
  public void line(LineChange change) {
    encoder.line(elapsedMicros(), change);
    write();
  }

  /** Keeps what the operator pressed. */
  public void mark(HostMark mark) {
    encoder.mark(elapsedMicros(), mark);
    write();
  }

  /**
   * The end of the capture, on disk when this returns.
   *
   * @throws OutputFailure if it could not be written
   */
  public void end(CaptureEnd.Reason reason) {
    encoder.end(elapsedMicros(), reason);
    write();
    try {
      disk.force();
    } catch (IOException e) {
      failure = e;
      throw failed(e);
    }
    close();
  }

  private void write() {
    IOException before = failure;
    if (before != null) {
      throw failed(before);
    }
    try {
      disk.write(encoder.bytes(), encoder.length());
    } catch (IOException e) {
      failure = e;
      throw failed(e);
    }
    goodMicros = elapsedMicros();
    unforced = true;
    onlooker.onBytes(encoder.bytes(), encoder.length());
  }

  private OutputFailure failed(IOException e) {
    close();
    String system = String.valueOf(e.getMessage());
    String why =
        system.toLowerCase(Locale.ROOT).contains("no space left")
            ? "the disk is full"
            : "cannot be written any more (" + system + ")";
    return new OutputFailure(
        name, "%s; all up to %.1f s is kept".formatted(why, goodMicros * 1e-6));
  }

  private void force() {
    synchronized (forcing) {
      while (!closed && failure == null) {
        try {
          if (unforced) {
            unforced = false;
            disk.force();
          }
          forcing.wait(FORCE_MS);
        } catch (IOException e) {
          failure = closed ? null : e;
        } catch (InterruptedException e) {
          Thread.currentThread().interrupt();
          return;
        }
      }
    }
  }

  /** Ends the file as it is; without {@link #end} it shows that it was cut off. */
  @Override
  public void close() {
    if (!closed) {
      closed = true;
      try {
        disk.close();
      } catch (IOException e) {
        failure = failure == null ? e : failure;
      }
    }
  }

  /** Ends the file and removes it: nothing of use was received. */
  public void discard() {
    close();
    Path made = path;
    try {
      if (made != null) {
        Files.deleteIfExists(made);
      }
    } catch (IOException e) {
      throw new OutputFailure(name, "could not be removed: " + e.getMessage());
    }
  }
}
