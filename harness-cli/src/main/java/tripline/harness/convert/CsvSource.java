package tripline.harness.convert;

import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tripline.capture.CaptureBegin;
import tripline.csv.CsvEvents;
import tripline.csv.CsvHeader;
import tripline.csv.CsvLayout;
import tripline.csv.CsvMetadata;
import tripline.csv.CsvReader;
import tripline.csv.CsvRequest;
import tripline.csv.PositionZero;
import tripline.harness.failure.InputFailure;
import tripline.harness.recording.InputBytes;
import tripline.harness.recording.LoggerNames;
import tripline.link.SinkSource;
import tripline.sample.Channels;
import tripline.sample.SampleSink;

/** A CSV recording. */
final class CsvSource implements Source {
  private final Path path;
  private final CsvLayout layout;
  private final Facts facts;

  /**
   * @param layout how it is written
   * @param asked contact channels that are wanted, as far as it has them; empty: every other column
   */
  CsvSource(Path path, CsvLayout layout, Optional<Channels> asked) {
    this.path = path;
    this.layout = layout;
    Survey survey = new Survey();
    CsvHeader header =
        read(path, layout, new CsvRequest(asked.orElse(none()), optional(asked)), why -> survey);
    List<String> contacts =
        asked
            .map(
                channels ->
                    channels.contacts().stream().filter(c -> !header.absent().contains(c)).toList())
            .orElse(
                header.columns().stream()
                    .filter(c -> !c.isBlank() && header.ignored().contains(c))
                    .toList());
    if (contacts.size() > Channels.MOST_CONTACTS) {
      throw new InputFailure(
          path.toString(),
          "has %d columns of contacts, expected %d at most"
              .formatted(contacts.size(), Channels.MOST_CONTACTS));
    }
    CsvMetadata metadata = header.metadata();
    this.facts =
        new Facts(
            contacts,
            metadata.drive().or(layout::drive),
            metadata
                .zero()
                .map(z -> z == PositionZero.KEPT ? CaptureBegin.Zero.KEPT : CaptureBegin.Zero.LOST),
            metadata.started(),
            LoggerNames.of(metadata),
            survey);
  }

  private static Channels none() {
    return new Channels(List.of());
  }

  private static Set<String> optional(Optional<Channels> asked) {
    return new HashSet<>(asked.map(Channels::contacts).orElse(List.of()));
  }

  @Override
  public Facts facts() {
    return facts;
  }

  @Override
  public void play(SinkSource sinks) {
    read(path, layout, CsvRequest.all(new Channels(facts.contacts())), sinks);
  }

  private static CsvHeader read(Path path, CsvLayout layout, CsvRequest request, SinkSource sinks) {
    Events events = new Events(sinks);
    CsvReader reader = new CsvReader(layout, request, events);
    InputBytes.read(path, (bytes, length) -> reader.accept(bytes, 0, length).isEmpty());
    reader
        .finish()
        .ifPresent(
            fault -> {
              throw new InputFailure(
                  path.toString(), fault.line(), fault.column(), fault.message());
            });
    CsvHeader header = events.header;
    if (header == null) {
      throw new InputFailure(path.toString(), "has no header, expected a recording");
    }
    return header;
  }

  private static final class Events implements CsvEvents {
    private final SinkSource sinks;
    private @Nullable CsvHeader header;

    Events(SinkSource sinks) {
      this.sinks = sinks;
    }

    @Override
    public SampleSink onHeader(CsvHeader read) {
      header = read;
      return sinks.next(SinkSource.Break.FIRST);
    }

    @Override
    public SampleSink onStepBack(long line, long fromNs, long toNs) {
      return sinks.next(SinkSource.Break.STEP_BACK);
    }
  }
}
