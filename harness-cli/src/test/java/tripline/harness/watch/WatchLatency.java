package tripline.harness.watch;

import java.io.OutputStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import tripline.capture.CaptureBegin;
import tripline.capture.CaptureFormat;
import tripline.harness.capture.CaptureFile;
import tripline.harness.capture.Capturing;
import tripline.harness.jobfile.JobFile;
import tripline.harness.recording.LiveCapture;
import tripline.harness.rehearse.Kit;
import tripline.harness.rehearse.RigPlan;
import tripline.harness.rehearse.valve.Setting;
import tripline.harness.report.Glyphs;
import tripline.harness.serial.BaudRate;
import tripline.harness.serial.ByteLine;
import tripline.harness.serial.Reach;
import tripline.harness.serial.SerialPorts;
import tripline.harness.terminal.TerminalSize;
import tripline.link.Encoding;
import tripline.sample.Drive;

/**
 * How long it takes from an edge at a contact until the screen shows it: a make-believe logger in
 * real time, a pseudo terminal, the serial library, the decoder, the frame. Edges of a burst count
 * from the first.
 */
final class WatchLatency {
  /** A contact that changed less than this ago bounces, ns. */
  private static final long BURST_NS = 100_000_000L;

  private static final TerminalSize SIZE = TerminalSize.USUAL;

  /** When the screen showed a contact in another state. */
  private record Shown(String contact, long wallNs) {}

  /** The terminal: notes when a contact's line changes. */
  private static final class Eye extends OutputStream {
    private static final Pattern CONTACT =
        Pattern.compile("^.(\\d\\d-\\d\\d) +\\S+ +(open|closed) ");

    private final TinyTerminal terminal = new TinyTerminal(SIZE);
    private final Map<String, String> states = new HashMap<>();
    private final List<Shown> shown = new ArrayList<>();

    @Override
    public void write(int b) {
      throw new AssertionError("byte by byte");
    }

    @Override
    public synchronized void write(byte[] bytes, int offset, int length) {
      long nowNs = System.nanoTime();
      terminal.write(bytes, offset, length);
      for (String line : terminal.shown()) {
        Matcher contact = CONTACT.matcher(line);
        if (contact.find()) {
          String before = states.put(contact.group(1), contact.group(2));
          if (before != null && !before.equals(contact.group(2))) {
            shown.add(new Shown(contact.group(1), nowNs));
          }
        }
      }
    }

    synchronized List<Shown> shown() {
      return List.copyOf(shown);
    }
  }

  private WatchLatency() {}

  /** Times from edge to screen, ms, rising. */
  static double[] measure(Path root, int passages) throws Exception {
    JobFile job = JobFile.read(root.resolve("recordings/motor-right/job.toml"));
    Eye eye = new Eye();
    try (LiveRig rig =
        new LiveRig(
            new RigPlan(job.sheet(), Setting.MIS_SET, 3, Kit.FULL, Encoding.FRAMES, 0, 0))) {
      Reach reach = SerialPorts.to(rig.pty.path(), new BaudRate(115_200));
      for (int k = 0; k < passages; k++) {
        rig.then("crank to 2.2 at 0.8");
        rig.then("crank to 0.3 at 0.8");
      }
      watch(job, reach, eye, rig);
      return latencies(job, rig.edges(), eye.shown());
    }
  }

  private static void watch(JobFile job, Reach reach, Eye eye, LiveRig rig) {
    PrintWriter nowhere =
        new PrintWriter(OutputStream.nullOutputStream(), true, StandardCharsets.UTF_8);
    Station station =
        new Station(
            Optional.of(new Screen(eye, StandardCharsets.UTF_8, Look.Colour.YES)),
            null,
            nowhere,
            nowhere,
            Glyphs.UNICODE);
    LiveCapture live = new LiveCapture("rig", job);
    CaptureBegin begin =
        new CaptureBegin(
            CaptureFormat.MAJOR,
            CaptureFormat.MINOR,
            Optional.of(Drive.HAND),
            Optional.empty(),
            0,
            job.sha256(),
            "test",
            "port",
            "",
            "");
    try (ByteLine line = reach.open();
        Watching watching =
            new Watching(job.sheet(), Optional.empty(), live, "port", Optional.empty(), station);
        CaptureFile file = CaptureFile.unkept(begin, System::nanoTime, watching::onBytes)) {
      Capturing capturing =
          new Capturing(
              file,
              reach,
              job.sheet().channels(),
              0,
              watching.panel(),
              System::nanoTime,
              InstantSource.system());
      capturing.begin(line);
      capturing.run(watching.until(rig::isIdle));
    }
  }

  private static double[] latencies(JobFile job, List<LiveRig.Edge> edges, List<Shown> shown) {
    List<Double> ms = new ArrayList<>();
    Map<Integer, Long> last = new HashMap<>();
    for (LiveRig.Edge edge : edges) {
      Long before = last.put(edge.channel(), edge.wallNs());
      boolean first = before == null || edge.wallNs() - before > BURST_NS;
      String channel = job.sheet().channels().contacts().get(edge.channel());
      if (first) {
        job.sheet().contacts().stream()
            .filter(c -> c.channel().equals(channel))
            .flatMap(
                c ->
                    shown.stream()
                        .filter(s -> s.contact().equals(c.name()) && s.wallNs() > edge.wallNs()))
            .findFirst()
            .map(s -> (s.wallNs() - edge.wallNs()) * 1e-6)
            .filter(t -> t < 2000)
            .ifPresent(ms::add);
      }
    }
    return ms.stream().mapToDouble(t -> t).sorted().toArray();
  }

  public static void main(String[] args) throws Exception {
    double[] ms = measure(Path.of(args[0]), Integer.parseInt(args[1]));
    System.out.printf(
        "%d edges: median %.1f ms, 90 %% %.1f ms, 99 %% %.1f ms, most %.1f ms%n",
        ms.length,
        ms[ms.length / 2],
        ms[ms.length * 9 / 10],
        ms[ms.length * 99 / 100],
        Arrays.stream(ms).max().orElse(0));
  }
}
