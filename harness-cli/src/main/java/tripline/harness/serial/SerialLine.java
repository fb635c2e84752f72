package tripline.harness.serial;

import com.fazecast.jSerialComm.SerialPort;

/** A line over an open port of the library. */
final class SerialLine implements ByteLine {
  private final String name;
  private final SerialPort port;
  private final Outbox outbox;
  private volatile boolean closed;

  SerialLine(String name, SerialPort port) {
    this.name = name;
    this.port = port;
    this.outbox =
        new Outbox(
            name, bytes -> port.writeBytes(bytes, bytes.length) == bytes.length, System::nanoTime);
  }

  @Override
  public String name() {
    return name;
  }

  @Override
  public int read(byte[] into) throws LineGone {
    int got = closed ? -1 : port.readBytes(into, into.length);
    if (got < 0) {
      throw new LineGone(name, closed ? "closed" : "unplugged");
    }
    giveUpIfStuck();
    return got;
  }

  @Override
  public void write(byte[] bytes, int length) throws LineGone {
    if (closed) {
      throw new LineGone(name, "closed");
    }
    giveUpIfStuck();
    if (!outbox.put(bytes, length)) {
      close();
      throw new LineGone(name, "takes no bytes");
    }
  }

  private void giveUpIfStuck() throws LineGone {
    if (outbox.stuck()) {
      close();
      throw new LineGone(name, "takes no bytes");
    }
  }

  @Override
  public void close() {
    if (!closed) {
      closed = true;
      outbox.end();
      port.closePort();
    }
  }
}
