package tripline.harness.command;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tripline.harness.report.SafeText;
import tripline.harness.seal.SealKey;
import tripline.harness.seal.SealedFile;
import tripline.harness.seal.Sealing;

/** Makes a change to a result, its record or its inputs show. */
@Command(
    name = "seal",
    description =
        "Sign the digests of a result or record, and of the inputs a result names, in FILE.seal.")
public final class SealCommand implements Callable<ExitStatus> {
  @Spec private @Nullable CommandSpec spec;

  @Parameters(
      arity = "1..*",
      paramLabel = "FILE",
      description = "Result files (.json) and records; the seal lies beside the first.")
  private @Nullable List<Path> files;

  @Option(
      names = "--key",
      paramLabel = "KEY",
      description = "Key file, made if there is none (default: seal.key in the user's settings).")
  private @Nullable Path key;

  @Override
  public ExitStatus call() {
    if (spec == null || files == null) {
      throw new IllegalStateException("called without its command line");
    }
    SealKey signer = SealKey.atOrNew(key == null ? usualKey() : key);
    List<SealedFile> sealed = Sealing.seal(files, signer, Instant.now());
    PrintWriter out = spec.commandLine().getOut();
    for (SealedFile file : sealed) {
      out.println("%-10s %s".formatted(file.role(), SafeText.line(file.path())));
    }
    out.println(
        "sealed in %s by key %s"
            .formatted(
                SafeText.line(Sealing.sealOf(files.get(0)).toString()), signer.fingerprint()));
    return ExitStatus.ACCEPTED;
  }

  static Path usualKey() {
    return SealKey.usualPlace(System.getenv(), System.getProperty("user.home", "."));
  }
}
