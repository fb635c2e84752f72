package tripline.capture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import tripline.sample.Drive;
import tripline.sample.Mark;

class CaptureTest {
  private static final CaptureBegin BEGIN =
      new CaptureBegin(
          1,
          0,
          Optional.of(Drive.HAND),
          Optional.of(CaptureBegin.Zero.LOST),
          1_772_439_245_000_000L,
          "ab".repeat(32),
          "tripline test",
          "/dev/ttyX",
          "CW-114",
          "job.toml");

  private final CaptureEncoder encoder = new CaptureEncoder();
  private final ByteArrayOutputStream file = new ByteArrayOutputStream();

  private void put(Consumer<CaptureEncoder> record) {
    record.accept(encoder);
    file.write(encoder.bytes(), 0, encoder.length());
  }

  private static byte[] bytes(Random random, int length) {
    byte[] bytes = new byte[length];
    random.nextBytes(bytes);
    for (int i = 0; i < length; i++) {
      bytes[i] = random.nextInt(4) == 0 ? 0 : bytes[i];
    }
    return bytes;
  }

  /** Records of every kind, some hundred kB; where each ends. */
  private List<Integer> sample(long seed) {
    Random random = new Random(seed);
    List<Integer> ends = new ArrayList<>();
    put(e -> e.begin(BEGIN));
    ends.add(file.size());
    for (int i = 0; i < 200; i++) {
      long at = i * 1000L;
      int length = 1 + random.nextInt(random.nextInt(50) == 0 ? CaptureFormat.MOST_DATA : 80);
      switch (i % 25) {
        case 7 ->
            put(
                e ->
                    e.line(
                        at,
                        new LineChange(
                            LineChange.Event.LOST, LineChange.Cause.UNPLUGGED, at, "späť")));
        case 13 ->
            put(e -> e.mark(at, new HostMark(Mark.NOTE, HostMark.Taken.HERE, "cover \u0000off")));
        default -> put(e -> e.received(at, bytes(random, length), 0, length));
      }
      ends.add(file.size());
    }
    put(e -> e.end(200_000, CaptureEnd.Reason.ASKED));
    ends.add(file.size());
    return ends;
  }

  @Test
  void everyKindOfRecordComesBack() {
    put(e -> e.begin(BEGIN));
    put(
        e ->
            e.line(
                10,
                new LineChange(LineChange.Event.OPENED, LineChange.Cause.NONE, 5, "/dev/ttyX")));
    put(e -> e.received(20, new byte[] {9, 0, 1, 2, 3}, 1, 3));
    put(e -> e.mark(30, new HostMark(Mark.CLOSED_STOP, HostMark.Taken.BY_LOGGER, "")));
    put(e -> e.mark(40, new HostMark(Mark.NOTE, HostMark.Taken.TOO_LATE, "späť")));
    put(e -> e.end(50, CaptureEnd.Reason.LINK));
    Captured captured = Captured.of(file.toByteArray());
    assertThat(captured.log)
        .containsExactly(
            "begin " + BEGIN,
            "10 LineChange[event=OPENED, cause=NONE, utcMicros=5, text=/dev/ttyX]",
            "20 received 000102 3",
            "30 HostMark[mark=CLOSED_STOP, taken=BY_LOGGER, text=]",
            "40 HostMark[mark=NOTE, taken=TOO_LATE, text=späť]",
            "50 CaptureEnd[reason=LINK, receivedBytes=3]");
    assertThat(captured.decoder.ended()).isTrue();
    assertThat(captured.decoder.counters())
        .isEqualTo(new CaptureCounters(file.size(), 6, 0, 0, 0, 0, 0, 0, 50));
  }

  /** The example of CAPTURE.md §5, byte for byte. */
  @Test
  void theExampleOfTheSpecificationIsWhatIsWritten() {
    put(
        e ->
            e.begin(
                new CaptureBegin(
                    1,
                    0,
                    Optional.empty(),
                    Optional.empty(),
                    0,
                    "00".repeat(32),
                    "p",
                    "",
                    "",
                    "")));
    file.reset();
    put(e -> e.received(1_000_000, new byte[] {0x11, 0, 0x22}, 0, 3));
    assertThat(HexFormat.ofDelimiter(" ").formatHex(file.toByteArray()))
        .isEqualTo("02 02 02 01 04 40 42 0f 01 01 01 01 01 01 01 01 02 11 06 22 02 86 7d ea 00");
  }

  @Test
  void pieceSizesMakeNoDifference() {
    sample(1);
    byte[] whole = file.toByteArray();
    List<String> expected = Captured.of(whole).log;
    Random random = new Random(2);
    for (int most : new int[] {1, 7, 300, 20_000}) {
      Captured cut = new Captured();
      int at = 0;
      while (at < whole.length) {
        int length = Math.min(whole.length - at, 1 + random.nextInt(most));
        cut.decoder.accept(whole, at, length);
        at += length;
      }
      cut.decoder.finish();
      assertThat(cut.log).isEqualTo(expected);
    }
  }

  /**
   * Whatever byte a crash cuts it at: every record that was whole is there, and the rest is
   * counted.
   */
  @Test
  void cutOffAnywhereAllWholeRecordsAreRead() {
    List<Integer> ends = sample(3);
    byte[] whole = file.toByteArray();
    List<String> expected = Captured.of(whole).log;
    Random random = new Random(4);
    for (int i = 0; i < 700; i++) {
      int length = i < 300 ? i : random.nextInt(whole.length);
      Captured cut = Captured.of(Arrays.copyOf(whole, length));
      int records = (int) ends.stream().filter(end -> end <= length).count();
      assertThat(cut.log).isEqualTo(expected.subList(0, records));
      int lastEnd = records == 0 ? Math.min(length, 8) : ends.get(records - 1);
      CaptureCounters counters = cut.decoder.counters();
      assertThat(counters.cut()).isEqualTo(length - lastEnd);
      assertThat(counters.damaged() + counters.missingBytes() + counters.missingRecords()).isZero();
      assertThat(cut.decoder.ended()).isEqualTo(length == whole.length);
    }
  }

  /**
   * A damaged byte costs the record it lies in, or the two it divides, and what is missing is said.
   */
  @Test
  void damageCostsOneRecordAndIsCounted() {
    List<Integer> ends = sample(5);
    byte[] whole = file.toByteArray();
    Captured good = Captured.of(whole);
    Random random = new Random(6);
    for (int i = 0; i < 700; i++) {
      byte[] spoilt = whole.clone();
      int at = 8 + random.nextInt(whole.length - 8);
      spoilt[at] ^= (byte) (1 << random.nextInt(8));
      Captured captured = Captured.of(spoilt);
      int gone = good.log.size() - captured.log.size();
      boolean delimiter = ends.contains(at + 1);
      boolean last = at >= ends.get(ends.size() - 2) - 1;
      assertThat(gone).as("records lost by a flip at " + at).isEqualTo(delimiter && !last ? 2 : 1);
      assertThat(good.log).containsAll(captured.log);
      CaptureCounters counters = captured.decoder.counters();
      assertThat(counters.damaged() + (counters.cut() > 0 ? 1 : 0)).isPositive();
      int first = captured.log.get(0).equals(good.log.get(0)) ? 0 : 1;
      if (first == 0 && !last) {
        assertThat(counters.missingRecords()).isEqualTo(gone);
      }
      assertThat(counters.missingBytes() + captured.received.size())
          .isEqualTo(good.received.size());
    }
  }

  @Test
  void aHoleOfZerosAndStrayBytesArePassed() {
    List<Integer> ends = sample(7);
    byte[] whole = file.toByteArray();
    Arrays.fill(whole, ends.get(50), ends.get(60), (byte) 0);
    Captured captured = Captured.of(whole);
    assertThat(captured.decoder.counters().missingRecords()).isEqualTo(10);
    assertThat(captured.decoder.counters().damaged()).isZero();
    Arrays.fill(whole, ends.get(50), ends.get(60), (byte) 0x55);
    assertThat(Captured.of(whole).decoder.counters().damaged()).isEqualTo(1);
  }

  @Test
  void recordsOfAnotherTypeFormOrTooShortAreSetAside() {
    put(e -> e.begin(BEGIN));
    put(e -> e.end(3, CaptureEnd.Reason.ASKED));
    byte[] body = new byte[CaptureFormat.HEADER];
    for (int type : new int[] {0x77, CaptureFormat.LINE, CaptureFormat.MARK, CaptureFormat.END}) {
      body[CaptureFormat.TYPE] = (byte) type;
      byte[] unit = Units.of(body);
      file.write(unit, 0, unit.length);
    }
    Captured captured = Captured.of(file.toByteArray());
    assertThat(captured.decoder.counters().unknown()).isEqualTo(4);
    assertThat(captured.log).hasSize(2);
  }

  @Test
  void longStringsAreCutAtACharacter() {
    put(e -> e.mark(0, new HostMark(Mark.NOTE, HostMark.Taken.HERE, "x" + "ä".repeat(200))));
    assertThat(Captured.of(new byte[8]).log).isEmpty();
    byte[] lead = CaptureFormat.lead();
    byte[] all = Arrays.copyOf(lead, lead.length + file.size());
    System.arraycopy(file.toByteArray(), 0, all, lead.length, file.size());
    assertThat(Captured.of(all).log)
        .containsExactly("0 HostMark[mark=NOTE, taken=HERE, text=x" + "ä".repeat(127) + "]");
  }

  @Test
  void moreBytesThanARecordHoldsAreRefused() {
    assertThatThrownBy(() -> encoder.received(0, new byte[9000], 0, 8193))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> encoder.received(0, new byte[9000], 0, 0))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void theFirstByteTellsACaptureFromText() {
    assertThat(CaptureFormat.isCapture(CaptureFormat.lead(), 1)).isTrue();
    assertThat(CaptureFormat.isCapture(new byte[] {(byte) 0xEF, (byte) 0xBB}, 2)).isFalse();
    assertThat(CaptureFormat.isCapture(new byte[] {'#'}, 1)).isFalse();
    assertThat(CaptureFormat.isCapture(new byte[1], 0)).isFalse();
  }
}
