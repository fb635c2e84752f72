package tripline.harness.command;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tripline.harness.report.SafeText;
import tripline.harness.seal.SealCheck;
import tripline.harness.seal.SealCheck.Found;
import tripline.harness.seal.SealCheck.State;
import tripline.harness.seal.SealKey;

/** Tells whether anything under a seal was changed, and what. */
@Command(
    name = "verify-seal",
    description = "Tell whether anything under a seal was changed, and which file.")
public final class VerifySealCommand implements Callable<ExitStatus> {
  @Spec private @Nullable CommandSpec spec;

  @Parameters(paramLabel = "FILE", description = "A seal, or the file it lies beside.")
  private @Nullable Path file;

  @Option(
      names = "--signer",
      paramLabel = "FINGERPRINT",
      description = "Fingerprint of the key it must be signed with, as seal prints it.")
  private @Nullable String signer;

  @Option(
      names = "--key",
      paramLabel = "KEY",
      description = "This user's key file (default: seal.key in the user's settings).")
  private @Nullable Path key;

  @Override
  public ExitStatus call() {
    if (spec == null || file == null) {
      throw new IllegalStateException("called without its command line");
    }
    SealCheck check = SealCheck.of(file);
    PrintWriter out = spec.commandLine().getOut();
    for (Found found : check.files()) {
      String state = found.state().name();
      out.println(
          "%-9s  %-10s %s"
              .formatted(
                  found.state() == State.UNCHANGED ? state.toLowerCase(Locale.ROOT) : state,
                  found.file().role(),
                  SafeText.line(found.file().path())));
    }
    if (!check.genuine()) {
      out.println("BROKEN: the seal itself was changed after it was signed");
      return ExitStatus.REJECTED;
    }
    return verdict(check, out);
  }

  private ExitStatus verdict(SealCheck check, PrintWriter out) {
    String by = "sealed %s by key %s".formatted(check.sealed(), check.fingerprint());
    if (!check.isIntact()) {
      out.println("BROKEN: not as it was when " + by);
      return ExitStatus.REJECTED;
    }
    if (signer != null && !signer.equalsIgnoreCase(check.fingerprint())) {
      out.println("BROKEN: " + by + ", expected " + SafeText.line(signer));
      return ExitStatus.REJECTED;
    }
    Optional<SealKey> own = SealKey.at(key == null ? SealCommand.usualKey() : key);
    boolean mine = own.isPresent() && own.get().fingerprint().equals(check.fingerprint());
    if (signer == null && !mine) {
      out.println("UNDECIDED: unchanged since it was " + by + ", which is not known here");
      return ExitStatus.UNDECIDED;
    }
    out.println("INTACT: unchanged since it was " + by + (mine ? ", this user's" : ""));
    return ExitStatus.ACCEPTED;
  }
}
