package tripline.harness.command;

import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tripline.harness.failure.InputFailure;
import tripline.harness.jobfile.JobFile;
import tripline.harness.rehearse.Kit;
import tripline.harness.rehearse.LineSource;
import tripline.harness.rehearse.Pace;
import tripline.harness.rehearse.Rehearsal;
import tripline.harness.rehearse.RigPlan;
import tripline.harness.rehearse.port.PortMaker;
import tripline.harness.rehearse.script.Grammar;
import tripline.harness.rehearse.script.ScriptFile;
import tripline.harness.rehearse.script.ScriptLine;
import tripline.harness.rehearse.valve.Setting;
import tripline.link.Encoding;

/** A make-believe actuator and logger on a serial device. */
@Command(
    name = "rehearse",
    description = {
      "A make-believe actuator and logger on a local serial device, for trying all of it with no hardware.",
      "",
      "The first line printed is the port, for --port of the other commands in another window."
          + " The valve's cams are mis-set, so that there is something to find and to adjust."
          + " Lines of a script, or of a program on standard input, are done one after the other, and the"
          + " rehearsal ends with the last; what is typed at a terminal is done at once."
    },
    footer = {"", Grammar.TEXT})
public final class RehearseCommand implements Callable<ExitStatus> {
  private static final String SHIPPED = "recordings/motor-right/job.toml";

  @Spec private @Nullable CommandSpec spec;

  @Parameters(
      index = "0",
      arity = "0..1",
      paramLabel = "JOB",
      description = "Job sheet (TOML) the valve is built after (default: " + SHIPPED + ").")
  private @Nullable Path job;

  @Option(names = "--script", paramLabel = "FILE", description = "Do the lines of this file.")
  private @Nullable Path script;

  @Option(
      names = "--link",
      paramLabel = "NAME",
      description = "Where the port appears (default: tripline-rehearsal in a folder of yours).")
  private @Nullable Path link;

  @Option(
      names = "--seed",
      paramLabel = "N",
      defaultValue = "1",
      description =
          "All that is left to chance; the same number builds the same valve (default: 1).")
  private long seed;

  @Option(
      names = "--speed",
      paramLabel = "X",
      defaultValue = "1",
      description = "Let time pass so many times faster, 0.1 to 100 (default: 1).")
  private double speed;

  @Option(names = "--right", description = "Build a valve that is set right.")
  private boolean right;

  @Option(names = "--lines", description = "The logger begins in lines, readable as text.")
  private boolean lines;

  @Option(
      names = "--small",
      description = "A small logger: lines only, start and stop, sampled contacts, no more.")
  private boolean small;

  @Option(
      names = "--uptime",
      paramLabel = "SECONDS",
      defaultValue = "0",
      description =
          "The logger has been on for so long; its clock wraps at 4294.967 s (default: 0).")
  private double uptimeS;

  @Option(
      names = "--baud",
      paramLabel = "N",
      defaultValue = "0",
      description = "Line rate from the logger, bits a second (default: 0, as fast as USB).")
  private int baud;

  @Override
  public ExitStatus call() {
    if (spec == null) {
      throw new IllegalStateException("called without its command line");
    }
    check(speed >= 0.1 && speed <= 100, "--speed is %s, expected 0.1 to 100", speed);
    check(uptimeS >= 0 && uptimeS <= 1e9, "--uptime is %s, expected 0 to 1e9", uptimeS);
    check(baud == 0 || baud >= 1200, "--baud is %s, expected 0 or at least 1200", baud);
    Path sheet = job == null ? shipped() : job;
    JobFile file = JobFile.read(sheet);
    Path name = link == null ? usualLink() : link;
    List<ScriptLine> script = script(file);
    RigPlan plan =
        new RigPlan(
            file.sheet(),
            right ? Setting.RIGHT : Setting.MIS_SET,
            seed,
            small ? Kit.SMALL : Kit.FULL,
            lines ? Encoding.LINES : Encoding.FRAMES,
            uptimeS,
            baud);
    PrintWriter out = spec.commandLine().getOut();
    PrintWriter notes = spec.commandLine().getErr();
    PortMaker ports = new PortMaker(name, List.of(PortMaker.Holder.values()));
    new Rehearsal(plan, ports, Pace.REAL, speed, out, notes)
        .run(greeting(name, file), script, source());
    return ExitStatus.ACCEPTED;
  }

  private void check(boolean right, String problem, Object value) {
    if (!right && spec != null) {
      throw new ParameterException(spec.commandLine(), problem.formatted(value));
    }
  }

  private List<ScriptLine> script(JobFile file) {
    return script == null
        ? List.of()
        : ScriptFile.read(script, Rehearsal.reader(file.sheet().cams()));
  }

  /** With a script only somebody at a terminal, as the launcher says, can go on after it. */
  private LineSource source() {
    boolean typed = Boolean.getBoolean("tripline.keyboard");
    if (script != null && !typed) {
      return LineSource.none();
    }
    BufferedReader in =
        new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
    return LineSource.of(in, typed ? LineSource.When.AT_ONCE : LineSource.When.IN_TURN);
  }

  private static List<String> greeting(Path name, JobFile file) {
    String port = name.toAbsolutePath().toString();
    return List.of(
        port,
        "the port of a make-believe logger on " + file.sheet().job().tag() + ", built after",
        file.file(),
        "In another window: tripline watch --port PORT JOB, or record --port PORT JOB OUT.",
        "Here: touch closed, run open, stop, truth, quit; help lists all there is.");
  }

  private static Path usualLink() {
    String own = System.getenv("XDG_RUNTIME_DIR");
    boolean usable = own != null && !own.isBlank() && Files.isWritable(Path.of(own));
    return usable
        ? Path.of(own, "tripline-rehearsal")
        : Path.of(
            System.getProperty("java.io.tmpdir", "/tmp"),
            "tripline-rehearsal-" + System.getProperty("user.name", "you"));
  }

  /** The program lies in {@code lib}, the sheets beside that. */
  private static Path shipped() {
    var source = RehearseCommand.class.getProtectionDomain().getCodeSource();
    if (source != null && source.getLocation() != null) {
      Path jar = Path.of(java.net.URI.create(source.getLocation().toString()));
      Path sheet = jar.resolveSibling("..").resolve(SHIPPED).normalize();
      if (Files.isReadable(sheet)) {
        return sheet;
      }
    }
    throw new InputFailure(SHIPPED, "is not beside the program, expected a JOB to be named");
  }
}
