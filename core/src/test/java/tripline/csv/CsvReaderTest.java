package tripline.csv;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import tripline.sample.Channels;
import tripline.sample.Drive;

class CsvReaderTest {
  /** The layout of a logger that speaks German, as in the job sheet's [recording]. */
  private static final CsvLayout GERMAN =
      new CsvLayout(
          ';',
          ',',
          "Zeit",
          CsvTimeUnit.MS,
          "Weg",
          List.of("1", "ZU"),
          List.of("0", "AUF"),
          Optional.of(Drive.HAND));

  @Test
  void readsARecordingOfOurOwnFormat() {
    Calls calls =
        Calls.of(
            """
            # tripline-recording: 1
            # drive: hand
            # started: 2026-03-02T08:14:05Z
            # zero: kept
            # logger: bench 3
            time,position,k1,k2,k3,k4,mark
            0.000,12.4015,1,0,1,0,
            0.001,12.4015,1,0,1,0,closed-stop
            """,
            "k1",
            "k2",
            "k3",
            "k4");
    assertThat(calls.fault).isEmpty();
    assertThat(calls.said.subList(1, calls.said.size()))
        .containsExactly(
            "0 12.4015 1111 101", "1000000 12.4015 1111 101", "1000000 CLOSED_STOP 'closed-stop'");
    CsvMetadata metadata = calls.header().metadata();
    assertThat(metadata.version()).isEqualTo(1);
    assertThat(metadata.drive()).contains(Drive.HAND);
    assertThat(metadata.started().orElseThrow()).hasToString("2026-03-02T08:14:05Z");
    assertThat(metadata.zero()).contains(PositionZero.KEPT);
    assertThat(metadata.others()).containsExactly(new CsvMetadata.Item("logger", "bench 3"));
    assertThat(calls.summary).isEqualTo(new CsvSummary(2, 0, 0, 0));
  }

  @Test
  void readsAForeignLayoutWithColumnsInAnyOrder() {
    Calls calls =
        Calls.of(
            GERMAN,
            """
            k2;Temperatur;Weg;Zeit;k1;Bemerkung\r
            zu;21,5;-3,25;-1000,5;AUF;\r
            1;21,5;-3,25;0;0;kalt\r
            """,
            "k1",
            "k2");
    assertThat(calls.said.subList(1, calls.said.size()))
        .containsExactly("-1000500000 -3.25 11 10", "0 -3.25 11 10");
    assertThat(calls.header().ignored()).containsExactly("Temperatur", "Bemerkung");
  }

  @Test
  void emptyCellsAreNoReading() {
    Calls calls = Calls.of("time,position,k1,k2\n0,,,\n1,5,,\n2,,1,\n3,,,0\n", "k1", "k2");
    assertThat(calls.said.subList(1, calls.said.size()))
        .containsExactly(
            "0 NaN 0 0", "1000000000 5.0 0 0", "2000000000 NaN 1 1", "3000000000 NaN 10 0");
  }

  @Test
  void passesOverAByteOrderMarkHoweverItIsCut() {
    byte[] bytes = "\uFEFFtime,position\n0,1\n".getBytes(StandardCharsets.UTF_8);
    for (int piece = 1; piece < bytes.length; piece++) {
      Calls calls = new Calls();
      calls.read(reader(calls), bytes, piece);
      assertThat(calls.fault).isEmpty();
      assertThat(calls.said).hasSize(2);
    }
  }

  @Test
  void readsEveryKindOfLineEnd() {
    List<String> lines = List.of("# drive: hand", "time,position", "0,1", "1,\"2\"", "2,3");
    String want = Calls.of(String.join("\n", lines) + "\n").whole();
    for (String end : new String[] {"\n", "\r\n", "\r"}) {
      assertThat(Calls.of(String.join(end, lines)).whole()).isEqualTo(want);
      assertThat(Calls.of(String.join(end, lines) + end).whole()).isEqualTo(want);
      assertThat(Calls.of(String.join(end, lines) + end + end).whole()).isEqualTo(want);
    }
  }

  @Test
  void rowsOfOneStampWithDifferentCellsAreOneMoment() {
    Calls calls = Calls.of("time,position,k1,k2\n1,5,,\n1,,1,\n1,,,0\n2,6,,\n", "k1", "k2");
    assertThat(calls.summary).isEqualTo(new CsvSummary(4, 0, 0, 0));
  }

  @Test
  void aCellReadTwiceAtOneStampIsCounted() {
    Calls calls = Calls.of("time,position,k1\n1,5,\n1,,1\n1,,0\n1,6,\n2,7,1\n", "k1");
    assertThat(calls.summary).isEqualTo(new CsvSummary(5, 2, 4, 0));
  }

  @Test
  void aStepBackIsReportedWithItsLine() {
    Calls calls = Calls.of("# x\ntime,position\n1,5\n2,5\n1.5,6\n1.5,7\n");
    assertThat(calls.said.subList(3, calls.said.size()))
        .containsExactly(
            "step back at line 5 from 2000000000 to 1500000000",
            "1500000000 6.0 0 0",
            "1500000000 7.0 0 0");
    assertThat(calls.summary).isEqualTo(new CsvSummary(4, 1, 6, 1));
  }

  @Test
  void marksAreTextWithoutControlCharacters() {
    Calls calls =
        Calls.of("time,position,mark\n0,1,\"wind-up,\n\u001b[31m \"\"here\"\" \"\n1,1,adjusted\n");
    assertThat(calls.said)
        .contains("0 NOTE 'wind-up,  [31m \"here\"'", "1000000000 ADJUSTED 'adjusted'");
  }

  @Test
  void channelsThatMayBeAbsentAreNamed() {
    Calls calls = new Calls();
    CsvRequest request =
        new CsvRequest(new Channels(List.of("k1", "t1", "m1")), Set.of("t1", "m1"));
    CsvReader reader = new CsvReader(CsvLayout.DEFAULT, request, calls);
    calls.read(reader, "time,position,k1,m1\n0,1,1,0\n".getBytes(StandardCharsets.UTF_8), 100);
    assertThat(calls.header().absent()).containsExactly("t1");
    assertThat(calls.said).contains("0 1.0 101 1");
  }

  @Test
  void theFaultStaysTheSame() {
    Calls calls = new Calls();
    CsvReader reader = reader(calls);
    byte[] bytes = "time,position\n0,x\n1,y\n".getBytes(StandardCharsets.UTF_8);
    Optional<CsvFault> fault = reader.accept(bytes, 0, bytes.length);
    assertThat(fault.orElseThrow().describe("a.csv"))
        .isEqualTo("a.csv:2:3: 'x' is no position, expected a number or nothing");
    assertThat(reader.accept(bytes, 0, bytes.length)).isEqualTo(fault);
    assertThat(reader.finish()).isEqualTo(fault);
    assertThat(reader.finish()).isEqualTo(fault);
  }

  @Test
  void takesNothingAfterTheEnd() {
    CsvReader reader = reader(new Calls());
    assertThat(reader.finish()).isPresent();
    assertThatThrownBy(() -> reader.accept(new byte[1], 0, 1))
        .isInstanceOf(IllegalStateException.class);
  }

  @Test
  void aPieceMustLieInItsArray() {
    assertThatThrownBy(() -> reader(new Calls()).accept(new byte[4], 2, 3))
        .isInstanceOf(IndexOutOfBoundsException.class);
  }

  private static CsvReader reader(Calls calls) {
    return new CsvReader(CsvLayout.DEFAULT, CsvRequest.all(new Channels(List.of())), calls);
  }
}
