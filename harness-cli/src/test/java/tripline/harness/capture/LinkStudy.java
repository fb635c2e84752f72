package tripline.harness.capture;

import java.nio.file.Files;
import java.nio.file.Path;

/** The proofs in full: {@code LinkStudy [line|throughput|unplugs|kills]...}, all without a name. */
public final class LinkStudy {
  private LinkStudy() {}

  public static void main(String[] args) throws Exception {
    String[] parts =
        args.length > 0 ? args : new String[] {"line", "throughput", "unplugs", "kills"};
    Path folder = Files.createTempDirectory("tripline-link");
    try {
      for (String part : parts) {
        System.out.println(
            part
                + ": "
                + switch (part) {
                  case "line" -> PtyProofs.atLineRate(folder, 600);
                  case "throughput" -> PtyProofs.throughput(folder, 100);
                  case "unplugs" -> PtyProofs.unplugs(folder, 50, 50);
                  case "kills" -> PtyProofs.kills(folder, 200, 200);
                  default -> throw new IllegalArgumentException(part);
                });
      }
    } finally {
      PtyProofs.clear(folder);
    }
    System.exit(0);
  }
}
