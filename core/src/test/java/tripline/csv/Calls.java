package tripline.csv;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tripline.sample.Channels;
import tripline.sample.ContactState;
import tripline.sample.Mark;
import tripline.sample.SampleSink;

/** Everything a reader says of a recording, as lines of text. */
final class Calls implements CsvEvents, SampleSink {
  final List<String> said = new ArrayList<>();
  final List<CsvHeader> headers = new ArrayList<>();
  Optional<CsvFault> fault = Optional.empty();
  CsvSummary summary = new CsvSummary(0, 0, 0, 0);

  static Calls of(String text, String... channels) {
    return of(CsvLayout.DEFAULT, text, channels);
  }

  static Calls of(CsvLayout layout, String text, String... channels) {
    return of(layout, text.getBytes(StandardCharsets.UTF_8), channels);
  }

  static Calls of(CsvLayout layout, byte[] bytes, String... channels) {
    CsvRequest request = CsvRequest.all(new Channels(List.of(channels)));
    Calls calls = new Calls();
    CsvReader reader = new CsvReader(layout, request, calls);
    calls.read(reader, bytes, bytes.length);
    return calls;
  }

  /** Reads in pieces of one size. */
  void read(CsvReader reader, byte[] bytes, int piece) {
    for (int p = 0; p < bytes.length; p += piece) {
      fault = reader.accept(bytes, p, Math.min(piece, bytes.length - p));
    }
    fault = reader.finish();
    summary = reader.summary();
  }

  CsvHeader header() {
    return headers.get(0);
  }

  /** All there is to compare: calls, fault, counts. */
  String whole() {
    return String.join("\n", said) + "\n" + fault + "\n" + summary;
  }

  @Override
  public SampleSink onHeader(CsvHeader header) {
    headers.add(header);
    said.add(header.toString());
    return this;
  }

  @Override
  public SampleSink onStepBack(long line, long fromNs, long toNs) {
    said.add("step back at line " + line + " from " + fromNs + " to " + toNs);
    return this;
  }

  @Override
  public void onRow(long timeNs, double reading, long known, long closed) {
    said.add(row(timeNs, reading, known, closed));
  }

  static String row(long timeNs, double reading, long known, long closed) {
    return timeNs
        + " "
        + reading
        + " "
        + Long.toBinaryString(known)
        + " "
        + Long.toBinaryString(closed);
  }

  @Override
  public void onMark(long timeNs, Mark mark, String text) {
    said.add(timeNs + " " + mark + " '" + text + "'");
  }

  @Override
  public void onEdge(long timeNs, long resolutionNs, int channel, ContactState state) {
    throw new AssertionError("a CSV holds no edges");
  }

  @Override
  public void onLoss(long fromNs, long toNs, long samples) {
    throw new AssertionError("a CSV does not know of losses");
  }
}
