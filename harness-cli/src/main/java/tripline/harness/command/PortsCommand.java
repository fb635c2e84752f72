package tripline.harness.command;

import java.io.PrintWriter;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;
import tripline.harness.report.SafeText;
import tripline.harness.serial.PresentPort;
import tripline.harness.serial.SerialPorts;

/** Lists serial ports. */
@Command(
    name = "ports",
    description =
        "Serial ports present, one a line: what to give as --port, what it is, USB vendor:product and"
            + " serial number. Pseudo terminals (a rehearsal's) are not listed, but can be named.")
public final class PortsCommand implements Callable<ExitStatus> {
  @Spec private @Nullable CommandSpec spec;

  @Override
  public ExitStatus call() {
    if (spec == null) {
      throw new IllegalStateException("called without its command line");
    }
    List<PresentPort> ports = SerialPorts.present();
    PrintWriter out = spec.commandLine().getOut();
    int width = ports.stream().mapToInt(p -> named(p).length()).max().orElse(0);
    for (PresentPort port : ports) {
      String what =
          "%s  %s  %s"
              .formatted(port.description(), port.usb().orElse(""), port.serial().orElse(""));
      out.println(
          SafeText.line(("%-" + width + "s  %s").formatted(named(port), what.strip()))
              .stripTrailing());
    }
    if (ports.isEmpty()) {
      spec.commandLine().getErr().println("no serial port is present");
    }
    return ExitStatus.ACCEPTED;
  }

  /** The name that stays with an adapter, wherever it is plugged in, is the better one to give. */
  private static String named(PresentPort port) {
    return port.lasting().orElse(port.path());
  }
}
