package tripline.harness.report.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.w3c.dom.Document;
import tripline.harness.failure.OutputFailure;
import tripline.harness.report.Provenance;
import tripline.harness.report.Specimen;
import tripline.harness.report.record.RecordPage.Medium;

class RecordPageTest {
  private static final Provenance FROM =
      new Provenance("cw114.toml", "ab".repeat(32), List.of(Provenance.Made.UNKNOWN));

  @TempDir private Path folder;

  @Test
  void isWellFormedAndSelfContained() throws Exception {
    String page = RecordPage.of(Specimen.powered(), Specimen.sheet(), FROM, Medium.SCREEN);
    Document document = parsed(page);
    assertThat(document.getElementsByTagName("svg").getLength()).isGreaterThan(9);
    assertThat(document.getElementsByTagName("script").getLength()).isZero();
    assertThat(page.replace("http://www.w3.org/", "")).doesNotContain("://", "url(", "@import");
  }

  @Test
  void saysWhatTheResultSays() {
    String page = RecordPage.of(Specimen.early(), Specimen.sheet(), FROM, Medium.SCREEN);
    assertThat(page)
        .contains(
            "REJECTED",
            "cam-early",
            "0.731 ± 0.021",
            "263.2° ± 7.4°",
            "< 0.1 %".replace("<", "&lt;"))
        .contains("Move its trip point 0.231 turns (83° of the handwheel) toward closed.")
        .contains("closed stop 0.010, fit 0.0011", "signature", "Isolate, lock out");
    assertThat(RecordPage.of(Specimen.withoutStop(), Specimen.sheet(), FROM, Medium.SCREEN))
        .contains("UNDECIDED", "the closed stop is not known", "not measured");
  }

  @Test
  void saysWhatTheStrokesSayTogether() {
    AcceptedCase outlier = AcceptedCase.of("accept-outlier");
    assertThat(RecordPage.of(outlier.result(), outlier.sheet(), FROM, Medium.SCREEN))
        .contains(
            "Acceptance over strokes", "Stroke 11, closing: 11-12 at 0.5", "4.020", "ISO 5725")
        .contains("stands out at", "Interval of future trips: mean ± (k s + z u)");
    String check = RecordPage.of(Specimen.powered(), Specimen.sheet(), FROM, Medium.SCREEN);
    assertThat(check).doesNotContain("Acceptance over strokes", "future trips");
  }

  /** An interval far wider than the tolerance ends in an arrow and keeps the trips legible. */
  @Test
  void anIntervalBeyondTheDrawingIsSaidToBe() {
    AcceptedCase few = AcceptedCase.of("accept-few-strokes");
    assertThat(RecordPage.of(few.result(), few.sheet(), FROM, Medium.SCREEN))
        .doesNotContain("data-mark=\"beyond\"");
    assertThat(RecordPage.of(AcceptedCase.hostile(), Specimen.hostileSheet(), FROM, Medium.SCREEN))
        .contains("data-mark=\"beyond\"");
  }

  @Test
  void hostileTextStaysTextWhereverItLands() throws Exception {
    Provenance from = new Provenance(Specimen.HOSTILE, Specimen.HOSTILE, List.of());
    String page =
        RecordPage.of(AcceptedCase.hostile(), Specimen.hostileSheet(), from, Medium.SCREEN);
    Document document = parsed(page);
    assertThat(document.getElementsByTagName("script").getLength()).isZero();
    assertThat(document.getElementsByTagName("img").getLength()).isZero();
    assertThat(page.codePoints())
        .noneMatch(
            c ->
                c != '\n'
                    && (Character.isISOControl(c) || Character.getType(c) == Character.FORMAT));
    assertThat(document.getDocumentElement().getTextContent()).contains("<script>", "{{tag}}");
  }

  @Test
  void becomesPdfWithItsLettersAndAMarkForThoseThatHaveNone() throws Exception {
    Path file = folder.resolve("record.PDF");
    RecordFile.write(
        file,
        Specimen.powered(),
        Specimen.sheet(),
        new Provenance("заслонка \u1200.toml", "ab".repeat(32), List.of()));
    try (var pdf = Loader.loadPDF(file.toFile())) {
      String text = new PDFTextStripper().getText(pdf);
      assertThat(pdf.getNumberOfPages()).isBetween(3, 8);
      assertThat(text)
          .contains("ACCEPTED", "CW-114", "0.512 ± 0.021", "Φ((U − y)/u)", "заслонка \ufffd.toml")
          .contains("CW-114 ACCEPTED", "page 1 of ");
    }
    assertThat(folder.toFile().list()).containsExactly("record.PDF");
  }

  /** Drawings stand two abreast and leave no holes: eleven of them and all tables on few pages. */
  @Test
  void anAcceptanceTakesFewPages() throws Exception {
    Path file = folder.resolve("record.pdf");
    AcceptedCase outlier = AcceptedCase.of("accept-outlier");
    RecordFile.write(file, outlier.result(), outlier.sheet(), FROM);
    try (var pdf = Loader.loadPDF(file.toFile())) {
      assertThat(pdf.getNumberOfPages()).isLessThanOrEqualTo(7);
      assertThat(new PDFTextStripper().getText(pdf))
          .contains("Acceptance over strokes", "FW-212 UNDECIDED", "4.020");
    }
  }

  @Test
  void hostileTextIsHarmlessInPdf() throws Exception {
    Path file = folder.resolve("record.pdf");
    RecordFile.write(file, AcceptedCase.hostile(), Specimen.hostileSheet(), FROM);
    try (var pdf = Loader.loadPDF(file.toFile())) {
      assertThat(new PDFTextStripper().getText(pdf)).contains("<script>", "REJECTED");
    }
  }

  @Test
  void refusesWhatItCannotWrite() {
    assertThat(RecordFile.canBe(Path.of("a.html"))).isTrue();
    assertThat(RecordFile.canBe(Path.of("a.txt"))).isFalse();
    for (String name : List.of("record.html", "record.pdf")) {
      Path nowhere = folder.resolve("no such folder").resolve(name);
      assertThatThrownBy(
              () -> RecordFile.write(nowhere, Specimen.accepted(), Specimen.sheet(), FROM))
          .isInstanceOf(OutputFailure.class)
          .hasMessageContaining("could not be written");
      assertThat(Files.exists(nowhere)).isFalse();
    }
  }

  private static Document parsed(String page) throws Exception {
    var builder = DocumentBuilderFactory.newInstance().newDocumentBuilder();
    return builder.parse(new ByteArrayInputStream(page.getBytes(StandardCharsets.UTF_8)));
  }
}
