package tripline.harness.convert;

import java.nio.file.Path;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.function.Consumer;
import java.util.stream.Stream;
import tripline.capture.CaptureBegin;
import tripline.capture.CaptureDecoder;
import tripline.capture.CaptureFormat;
import tripline.capture.CaptureSamples;
import tripline.csv.CsvLayout;
import tripline.harness.failure.InputFailure;
import tripline.harness.recording.InputBytes;
import tripline.harness.recording.LoggerNames;
import tripline.link.ChannelDescription;
import tripline.link.ChannelKind;
import tripline.link.SinkSource;
import tripline.sample.Channels;

/** A capture of the logger link. */
final class CaptureSource implements Source {
  private final Path path;
  private final Facts facts;

  CaptureSource(Path path, Consumer<String> notices) {
    this.path = path;
    Survey survey = new Survey();
    CaptureSamples seen = read(path, new Channels(List.of()), why -> survey);
    if (seen.begin().map(CaptureBegin::major).orElse(0) > CaptureFormat.MAJOR) {
      throw new InputFailure(
          path.toString(), "is a capture of a later version than this program's");
    }
    if (survey.rows() == 0) {
      throw new InputFailure(path.toString(), "holds no samples, expected a recording");
    }
    if (seen.end().isEmpty()) {
      notices.accept("was cut off (no orderly end): what was received by then is converted");
    }
    if (seen.gapCount() > 0) {
      notices.accept(
          "the line was lost %d times: stretches without rows".formatted(seen.gapCount()));
    }
    this.facts =
        new Facts(
            contacts(seen.samples().channels()),
            seen.begin().flatMap(CaptureBegin::drive),
            seen.begin().flatMap(CaptureBegin::zero),
            seen.begin()
                .filter(b -> b.utcMicros() > 0)
                .map(b -> Instant.EPOCH.plus(b.utcMicros(), ChronoUnit.MICROS)),
            LoggerNames.of(Stream.ofNullable(seen.samples().identity()).toList()),
            survey);
  }

  private List<String> contacts(List<ChannelDescription> channels) {
    List<String> names =
        channels.stream()
            .filter(c -> c.kind() == ChannelKind.CONTACT)
            .map(ChannelDescription::name)
            .toList();
    for (String name : names) {
      if (List.of(CsvLayout.DEFAULT.time(), CsvLayout.DEFAULT.position(), CsvLayout.MARK)
              .contains(name)
          || names.indexOf(name) != names.lastIndexOf(name)) {
        throw new InputFailure(
            path.toString(),
            "contact channel \"%s\" has the name of another column, expected one of its own"
                .formatted(name));
      }
    }
    return names;
  }

  @Override
  public Facts facts() {
    return facts;
  }

  @Override
  public void play(SinkSource sinks) {
    read(path, new Channels(facts.contacts()), sinks);
  }

  private static CaptureSamples read(Path path, Channels asked, SinkSource sinks) {
    CaptureSamples samples = new CaptureSamples(asked, sinks);
    CaptureDecoder decoder = new CaptureDecoder(samples);
    InputBytes.read(
        path,
        (bytes, length) -> {
          decoder.accept(bytes, 0, length);
          return true;
        });
    decoder.finish();
    samples.finish(decoder.counters().lastMicros());
    return samples;
  }
}
