package tripline.csv;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import tripline.sample.Channels;

/** What must hold for every recording, tried on random ones. */
class LawsTest {
  private static final int RECORDINGS = 200;

  @Test
  void theCutIntoPiecesChangesNothing() {
    for (int seed = 0; seed < RECORDINGS; seed++) {
      RandomRecording recording = new RandomRecording(seed);
      byte[] bytes = recording.bytes();
      String whole = read(recording, bytes, bytes.length, CsvReader.Shortcut.TAKEN);
      assertThat(whole).as(recording.toString()).contains("Optional.empty");
      for (int piece : new int[] {1, 2, 3, 7, 64, 1000}) {
        assertThat(read(recording, bytes, piece, CsvReader.Shortcut.TAKEN)).isEqualTo(whole);
      }
    }
  }

  /** Also where the file is faulty, and in pieces of changing size. */
  @Test
  void theCutIntoPiecesChangesNoFault() {
    for (int seed = 0; seed < RECORDINGS; seed++) {
      RandomRecording recording = new RandomRecording(seed);
      Random random = new Random(seed);
      byte[] bytes = Mutation.of(recording.bytes(), random);
      String whole = read(recording, bytes, bytes.length, CsvReader.Shortcut.TAKEN);
      Calls calls = new Calls();
      CsvReader reader = reader(recording, calls, CsvReader.Shortcut.TAKEN);
      for (int p = 0; p < bytes.length; ) {
        byte[] piece = new byte[Math.min(1 + random.nextInt(300), bytes.length - p)];
        System.arraycopy(bytes, p, piece, 0, piece.length);
        calls.fault = reader.accept(piece, 0, piece.length);
        p += piece.length;
      }
      calls.fault = reader.finish();
      calls.summary = reader.summary();
      assertThat(calls.whole()).as("seed %d", seed).isEqualTo(whole);
    }
  }

  @Test
  void theShortWayReadsWhatTheCarefulOneReads() {
    for (int seed = 0; seed < 2 * RECORDINGS; seed++) {
      RandomRecording recording = new RandomRecording(seed);
      byte[] bytes = recording.bytes();
      if (seed % 2 == 1) {
        bytes = Mutation.of(bytes, new Random(seed));
      }
      assertThat(read(recording, bytes, bytes.length, CsvReader.Shortcut.TAKEN))
          .as("seed %d", seed)
          .isEqualTo(read(recording, bytes, bytes.length, CsvReader.Shortcut.AVOIDED));
    }
  }

  @Test
  void decimalCommaSaysWhatDecimalPointSays() {
    for (int seed = 0; seed < RECORDINGS; seed++) {
      RandomRecording point = new RandomRecording(seed, Optional.of('.'));
      RandomRecording comma = new RandomRecording(seed, Optional.of(','));
      byte[] bytes = comma.bytes();
      assertThat(read(comma, bytes, bytes.length, CsvReader.Shortcut.TAKEN))
          .isEqualTo(read(point, point.bytes(), bytes.length, CsvReader.Shortcut.TAKEN));
    }
  }

  static String read(
      RandomRecording recording, byte[] bytes, int piece, CsvReader.Shortcut shortcut) {
    Calls calls = new Calls();
    calls.read(reader(recording, calls, shortcut), bytes, piece);
    return calls.whole();
  }

  private static CsvReader reader(
      RandomRecording recording, Calls calls, CsvReader.Shortcut shortcut) {
    CsvRequest request = CsvRequest.all(new Channels(List.of(recording.channels)));
    return new CsvReader(recording.layout, request, calls, shortcut);
  }
}
