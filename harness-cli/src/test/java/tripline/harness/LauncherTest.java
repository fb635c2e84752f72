package tripline.harness;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.condition.OS.WINDOWS;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The POSIX launcher against a stand-in for Java that prints its arguments, one a line. */
@DisabledOnOs(value = WINDOWS, disabledReason = "a POSIX shell script")
class LauncherTest {
  private static final Path SCRIPT =
      Path.of(System.getProperty("tripline.root"), "harness-cli/src/main/dist/bin/tripline");

  private static final String PRINTS_ARGUMENTS =
      """
      #!/bin/sh
      for a in "$@"; do
        case $a in
          -XX:DumpLoadedClassList=*) echo some/Class >"${a#*=}"; exit 0 ;;
          -Xshare:dump) dump=yes ;;
          -XX:SharedArchiveFile=*) [ -z "${dump:-}" ] || { echo archive >"${a#*=}"; exit 0; } ;;
        esac
      done
      for a in "$@"; do printf '%s\\n' "$a"; done
      """;

  @TempDir private Path temp;
  private Map<String, String> locale = Map.of();
  private Path home;
  private Path launcher;
  private Path java17;

  @BeforeEach
  void unpack() throws IOException {
    home = temp.resolve("a place with spaces & $signs");
    launcher = home.resolve("bin/tripline");
    Files.createDirectories(launcher.getParent());
    String script = Files.readString(SCRIPT).replace("/usr/lib/jvm", temp + "/no-jvms");
    executable(launcher, script);
    Files.createDirectories(home.resolve("lib"));
    Files.writeString(home.resolve("lib/tripline-harness-9.9.jar"), "not opened here");
    java17 = javaHome("java17", "17.0.1", PRINTS_ARGUMENTS);
  }

  @Test
  void handsArgumentsOnUntouched() throws Exception {
    Run run = run(java17, temp, launcher, "check", "a b", "*", "$HOME", "", "it's \"so\"");
    assertThat(run.status).isZero();
    assertThat(run.errors).isEmpty();
    assertThat(run.answers)
        .endsWith("-jar", jar(), "check", "a b", "*", "$HOME", "", "it's \"so\"")
        .contains("-XX:+UseSerialGC");
  }

  @ParameterizedTest
  @CsvSource({
    "LC_ALL, C, C.UTF-8 1",
    "LANG, POSIX, C.UTF-8 1",
    "LANG, '', C.UTF-8 1",
    "LC_CTYPE, de_DE.UTF-8, ' '"
  })
  void fileNamesAreUtf8WhereThereIsNoLocale(String variable, String value, String seen)
      throws Exception {
    Path java =
        javaHome("java17e", "17.0.2", "#!/bin/sh\necho \"${LC_ALL:-} ${TRIPLINE_ASCII:-}\"\n");
    locale = Map.of(variable, value);
    assertThat(run(java, temp, launcher, "--version").answers).endsWith(seen);
  }

  @Test
  void takesTheSecondCompilerOnlyForDigestsOfLargeFiles() throws Exception {
    Path small = Files.writeString(temp.resolve("small recording.csv"), "time");
    Path large = temp.resolve("large recording.csv");
    try (RandomAccessFile file = new RandomAccessFile(large.toFile(), "rw")) {
      file.setLength(41_000_000);
    }
    String json = "--json=r.json";
    assertThat(compilersOf("check", small, large)).isEqualTo(Compilers.FIRST);
    assertThat(compilersOf("check", small, json)).isEqualTo(Compilers.FIRST);
    assertThat(compilersOf("check", small, large, json)).isEqualTo(Compilers.BOTH);
    assertThat(compilersOf("check", "--report", "r.pdf", large)).isEqualTo(Compilers.BOTH);
    assertThat(compilersOf("accept", "--json", "-", small, large)).isEqualTo(Compilers.BOTH);
    assertThat(compilersOf("check", "none.csv", json)).isEqualTo(Compilers.FIRST);
    assertThat(compilersOf("convert", large, json)).isEqualTo(Compilers.FIRST);
    assertThat(compilersOf("seal", small)).isEqualTo(Compilers.BOTH);
    assertThat(compilersOf("ports")).isEqualTo(Compilers.FIRST);
  }

  private enum Compilers {
    FIRST,
    BOTH
  }

  private Compilers compilersOf(String command, Object... arguments) throws Exception {
    String[] all =
        Stream.concat(Stream.of(command), Stream.of(arguments).map(Object::toString))
            .toArray(String[]::new);
    Run run = run(java17, temp, launcher, all);
    assertThat(run.errors).isEmpty();
    assertThat(run.answers).endsWith(all);
    boolean first = run.answers.contains("-XX:TieredStopAtLevel=1");
    assertThat(run.answers.contains("-XX:Tier4InvocationThreshold=500000")).isNotEqualTo(first);
    return first ? Compilers.FIRST : Compilers.BOTH;
  }

  @Test
  void findsItselfThroughChainedAndRelativeLinks() throws Exception {
    Path links = Files.createDirectories(temp.resolve("links"));
    Files.createSymbolicLink(links.resolve("absolute"), launcher);
    Files.createSymbolicLink(links.resolve("relative"), Path.of("absolute"));
    assertThat(run(java17, temp, links.resolve("relative")).answers).endsWith("-jar", jar());
    assertThat(run(java17, links, Path.of("./relative")).answers).endsWith("-jar", jar());
  }

  @Test
  void makesItsArchiveOnceAndAnotherOneForAnotherBuild() throws Exception {
    assertThat(archiveOf(run(java17, temp, launcher)))
        .isEqualTo(archiveOf(run(java17, temp, launcher)));
    assertThat(caches()).hasSize(1);
    Files.writeString(home.resolve("lib/tripline-harness-9.9.jar"), "another build.");
    assertThat(archiveOf(run(java17, temp, launcher))).startsWith(home.resolve("cache") + "/");
    assertThat(caches()).hasSize(2);
  }

  /** As runtimes newer than 17 write them (seen of 25): each list numbers its classes by itself. */
  @Test
  void classesOfTwoListsAreAskedForOnceWhateverTheirNumbers() throws Exception {
    Files.createDirectories(home.resolve("recordings/right-fine"));
    Files.writeString(home.resolve("recordings/right-fine/hand.csv"), "time");
    Path java =
        javaHome(
            "java25",
            "25",
            PRINTS_ARGUMENTS
                .replace(
                    "echo some/Class >\"${a#*=}\"",
                    "case $* in *--json*) n=7 ;; *) n=8 ;; esac;"
                        + " printf 'some/Class id: %s\\n@lambda-proxy A id\\n' $n >\"${a#*=}\"")
                .replace(
                    "-Xshare:dump) dump=yes ;;",
                    "-Xshare:dump) dump=yes ;;"
                        + " -XX:SharedClassListFile=*) cp \"${a#*=}\" '"
                        + temp
                        + "/asked' ;;"));
    assertThat(archiveOf(run(java, temp, launcher))).endsWith(".jsa");
    assertThat(temp.resolve("asked")).hasContent("some/Class\n@lambda-proxy A id\n");
  }

  @Test
  void goesWithoutAnArchiveWhereNoneCanBeMade() throws Exception {
    Path broken =
        javaHome(
            "broken",
            "17",
            PRINTS_ARGUMENTS.replace("echo archive >\"${a#*=}\"; exit 0", "exit 1"));
    for (int start = 0; start < 2; start++) {
      Run run = run(broken, temp, launcher, "ports");
      assertThat(run.status).isZero();
      assertThat(run.errors).isEmpty();
      assertThat(run.answers).endsWith("ports").noneMatch(a -> a.contains("SharedArchiveFile"));
    }
    assertThat(caches()).singleElement().asString().endsWith(".failed");
  }

  /** Another command of the same user builds the program anew meanwhile. */
  @Test
  void goesWithoutAWordWhereItsCacheIsTakenAway() throws Exception {
    String made = "echo archive >\"${a#*=}\"; exit 0";
    String taken = "rm -rf \"$(dirname \"${a#*=}\")\"; exit ";
    for (int status = 0; status < 2; status++) {
      Path java = javaHome("taking", "17", PRINTS_ARGUMENTS.replace(made, taken + status));
      Run run = run(java, temp, launcher, "ports");
      assertThat(run.status).isZero();
      assertThat(run.errors).isEmpty();
      assertThat(run.answers).endsWith("ports").noneMatch(a -> a.contains("SharedArchiveFile"));
    }
  }

  @Test
  void saysInOneLineThatJavaIsTooOld() throws Exception {
    String old = "#!/bin/sh\necho 'openjdk version \"11.0.2\"' >&2\n";
    Run run = run(javaHome("java11", "11.0.2", old), temp, launcher, "--version");
    assertThat(run.status).isEqualTo(70);
    assertThat(run.answers).isEmpty();
    assertThat(run.errors).singleElement().asString().contains("Java runtime, 17 or newer");
  }

  @Test
  void asksAJavaThatHasNoReleaseFile() throws Exception {
    Path shim =
        javaHome(
            "shim",
            "",
            "#!/bin/sh\n[ \"$1\" != -version ] || { echo 'openjdk version \"21\"' >&2; exit; }\necho ran\n");
    Files.delete(shim.resolve("release"));
    assertThat(run(shim, temp, launcher).answers).containsExactly("ran");
  }

  private Path javaHome(String name, String version, String java) throws IOException {
    Path folder = Files.createDirectories(temp.resolve(name).resolve("bin"));
    executable(folder.resolve("java"), java);
    Files.writeString(
        temp.resolve(name).resolve("release"), "X=\"1\"\nJAVA_VERSION=\"" + version + "\"\n");
    return temp.resolve(name);
  }

  private static void executable(Path file, String text) throws IOException {
    Files.writeString(file, text);
    Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rwxr-xr-x"));
  }

  private String jar() throws IOException {
    return home.toRealPath().resolve("lib/tripline-harness-9.9.jar").toString();
  }

  private List<Path> caches() throws IOException {
    try (var files = Files.list(home.resolve("cache"))) {
      return files.toList();
    }
  }

  private static String archiveOf(Run run) {
    String option = "-XX:SharedArchiveFile=";
    return run.answers.stream()
        .filter(a -> a.startsWith(option))
        .findFirst()
        .orElseThrow()
        .substring(option.length());
  }

  private record Run(int status, List<String> answers, List<String> errors) {}

  private Run run(Path javaHome, Path folder, Path command, String... arguments) throws Exception {
    List<String> line = new ArrayList<>(List.of(command.toString()));
    line.addAll(List.of(arguments));
    Path errors = Files.createTempFile(temp, "errors", "");
    ProcessBuilder builder =
        new ProcessBuilder(line).directory(folder.toFile()).redirectError(errors.toFile());
    builder
        .environment()
        .keySet()
        .removeAll(List.of("LC_ALL", "LC_CTYPE", "LANG", "TRIPLINE_ASCII"));
    builder.environment().putAll(locale);
    builder.environment().put("JAVA_HOME", javaHome.toString());
    builder.environment().put("PATH", javaHome.resolve("bin") + ":/usr/bin:/bin");
    Process process = builder.start();
    List<String> answers =
        new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8)
            .lines()
            .toList();
    assertThat(process.waitFor(30, TimeUnit.SECONDS)).isTrue();
    return new Run(process.exitValue(), answers, Files.readAllLines(errors));
  }
}
