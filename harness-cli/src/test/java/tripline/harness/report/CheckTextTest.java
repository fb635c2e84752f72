package tripline.harness.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tripline.job.JobSheet;
import tripline.result.Result;

/**
 * The answer on the terminal, line by line as a person reads it. The texts under {@code
 * src/test/resources/report} were read and approved; a change of wording is a change there.
 */
class CheckTextTest {
  private static final TextStyle PLAIN = new TextStyle(Glyphs.UNICODE, Ink.PLAIN);
  private static final TextStyle ASCII = new TextStyle(Glyphs.ASCII, Ink.PLAIN);

  record Case(String name, Result result, int mostLines) {
    @Override
    public String toString() {
      return name;
    }
  }

  static List<Case> cases() {
    return List.of(
        new Case("accepted", Specimen.accepted(), 40),
        new Case("early", Specimen.early(), 48),
        new Case("near-the-limit", Specimen.nearTheLimit(), 40),
        new Case("without-stop", Specimen.withoutStop(), 48),
        new Case("powered", Specimen.powered(), 40),
        new Case("adjusted", Specimen.adjusted(), 40));
  }

  @ParameterizedTest
  @MethodSource("cases")
  void readsAsApproved(Case each) {
    assertThat(text(each.result(), Specimen.sheet(), PLAIN))
        .isEqualTo(approved(each.name() + ".txt"));
  }

  @ParameterizedTest
  @MethodSource("cases")
  void fitsAScreen(Case each) {
    for (TextStyle style : List.of(PLAIN, ASCII)) {
      List<String> lines = text(each.result(), Specimen.sheet(), style).lines().toList();
      assertThat(lines)
          .allMatch(l -> Columns.width(l) <= 79)
          .hasSizeLessThanOrEqualTo(each.mostLines());
    }
  }

  @ParameterizedTest
  @MethodSource("cases")
  void needsNoMoreThanAsciiWhereAsked(Case each) {
    assertThat(text(each.result(), Specimen.sheet(), ASCII))
        .matches("[\\x20-\\x7e\\n]*")
        .isEqualTo(
            each.name().equals("early")
                ? approved("early-ascii.txt")
                : text(each.result(), Specimen.sheet(), ASCII));
  }

  @ParameterizedTest
  @MethodSource("cases")
  void colourOnlyRepeatsWhatWordsSay(Case each) {
    TextStyle coloured = new TextStyle(Glyphs.UNICODE, Ink.ANSI);
    String text = text(each.result(), Specimen.sheet(), coloured);
    assertThat(text).contains("\u001b[");
    assertThat(text.replaceAll("\u001b\\[[0-9;]*m", "").replaceAll(" +\n", "\n"))
        .isEqualTo(text(each.result(), Specimen.sheet(), PLAIN));
  }

  @Test
  void nothingFromOutsideSteersTheTerminal() {
    String text = text(Specimen.hostile(), Specimen.hostileSheet(), PLAIN);
    assertThat(text.replace("\n", "").codePoints())
        .noneMatch(c -> Character.isISOControl(c) || Character.getType(c) == Character.FORMAT);
    assertThat(text.lines()).allMatch(l -> Columns.width(l) <= 79);
    assertThat(text).contains("\ufffd[31m");
    assertThat(text(Specimen.hostile(), Specimen.hostileSheet(), ASCII))
        .matches("[\\x20-\\x7e\\n]*");
  }

  @Test
  void colourIsForTerminalsThatWantIt() {
    assertThat(Ink.of(Map.of("TERM", "xterm"), true)).isEqualTo(Ink.ANSI);
    assertThat(Ink.of(Map.of("TERM", "xterm"), false)).isEqualTo(Ink.PLAIN);
    assertThat(Ink.of(Map.of("TERM", "dumb"), true)).isEqualTo(Ink.PLAIN);
    assertThat(Ink.of(Map.of("NO_COLOR", "1"), true)).isEqualTo(Ink.PLAIN);
    assertThat(Ink.of(Map.of("NO_COLOR", ""), true)).isEqualTo(Ink.ANSI);
  }

  @Test
  void figuresAreRoundedToWhatTheirUncertaintySupports() {
    Rounded rounded = new Rounded("±");
    // JCGM 100:2008 7.2.6: m = 100.021 47 g with u = 0.35 mg is stated as 100.021 47(35).
    assertThat(rounded.interval(100.021472, 0.000352)).isEqualTo("100.02147 ± 0.00035");
    assertThat(rounded.interval(0.5124, 0.0996)).isEqualTo("0.51 ± 0.10");
    assertThat(rounded.interval(31.4, 12)).isEqualTo("31 ± 12");
    assertThat(Rounded.signed(-0.0001, 0.02)).isEqualTo("+0.000");
    assertThat(Rounded.probability(0.99999)).isEqualTo("> 99.9 %");
    assertThat(Rounded.probability(1e-9)).isEqualTo("< 0.1 %");
    assertThat(Rounded.probability(0.5)).isEqualTo("50.0 %");
  }

  private static String text(Result result, JobSheet sheet, TextStyle style) {
    StringWriter text = new StringWriter();
    CheckText.write(result, sheet, style, new PrintWriter(text));
    return text.toString().replace(System.lineSeparator(), "\n");
  }

  private static String approved(String name) {
    try (var in = CheckTextTest.class.getResourceAsStream("/report/" + name)) {
      return in == null ? "" : new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
