package tripline.harness.serial;

import com.fazecast.jSerialComm.SerialPort;
import com.fazecast.jSerialComm.SerialPortInvalidPortException;
import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import tripline.harness.failure.LinkFailure;

/** The serial ports of this machine. */
public final class SerialPorts {
  /** Where Linux keeps names that stay with an adapter. */
  private static final Path LASTING = Path.of("/dev/serial/by-id");

  private SerialPorts() {}

  /** Ports present now, by path. Pseudo terminals are not among them, though they can be opened. */
  public static List<PresentPort> present() {
    NativeLibrary.load();
    return Arrays.stream(SerialPort.getCommPorts())
        .map(SerialPorts::described)
        .sorted(Comparator.comparing(PresentPort::path))
        .toList();
  }

  private static PresentPort described(SerialPort port) {
    String path = port.getSystemPortPath();
    boolean onUsb = port.getVendorID() > 0;
    return new PresentPort(
        path,
        port.getPortDescription(),
        onUsb
            ? Optional.of("%04x:%04x".formatted(port.getVendorID(), port.getProductID()))
            : Optional.empty(),
        onUsb ? stated(port.getSerialNumber()) : Optional.empty(),
        lasting(path));
  }

  private static Optional<String> stated(String serial) {
    return serial == null || serial.isBlank() || serial.equals("Unknown")
        ? Optional.empty()
        : Optional.of(serial);
  }

  private static Optional<String> lasting(String path) {
    if (!Files.isDirectory(LASTING)) {
      return Optional.empty();
    }
    try (Stream<Path> links = Files.list(LASTING)) {
      for (Path link : links.toList()) {
        if (link.toRealPath().toString().equals(path)) {
          return Optional.of(link.toString());
        }
      }
      return Optional.empty();
    } catch (IOException e) {
      return Optional.empty();
    }
  }

  /** The way to a port; each line opened is a new object of the library. */
  public static Reach to(String name, BaudRate baud) {
    return () -> open(name, baud);
  }

  /**
   * Opens a port: eight data bits, no parity, one stop bit, no flow control.
   *
   * @throws LinkFailure if there is no such port or it cannot be opened, saying why
   */
  public static ByteLine open(String name, BaudRate baud) {
    NativeLibrary.load();
    // Left alone, the library would look for the last part of a missing path under /dev.
    if (name.contains(File.separator) && !new File(name).exists()) {
      throw new LinkFailure(name, "no such port; `tripline ports` lists those present");
    }
    SerialPort port;
    try {
      port = SerialPort.getCommPort(name);
    } catch (SerialPortInvalidPortException e) {
      throw new LinkFailure(name, "no such port; `tripline ports` lists those present");
    }
    port.setComPortParameters(
        baud.bitsPerSecond(), 8, SerialPort.ONE_STOP_BIT, SerialPort.NO_PARITY);
    port.setFlowControl(SerialPort.FLOW_CONTROL_DISABLED);
    port.setComPortTimeouts(
        SerialPort.TIMEOUT_READ_SEMI_BLOCKING | SerialPort.TIMEOUT_WRITE_BLOCKING,
        ByteLine.READ_WAIT_MS,
        0);
    if (!port.openPort()) {
      throw new LinkFailure(name, OpenError.words(port.getLastErrorCode()));
    }
    return new SerialLine(name, port);
  }
}
