package tripline.cases;

import java.util.List;
import tripline.capture.CaptureDecoder;
import tripline.capture.CaptureSamples;
import tripline.sample.Channels;
import tripline.sample.SampleSink;

/** What a capture holds, as rows. */
final class CapturedRows {
  private CapturedRows() {}

  static void play(byte[] file, List<String> channels, SampleSink sink) {
    CaptureSamples samples = new CaptureSamples(new Channels(channels), why -> sink);
    CaptureDecoder decoder = new CaptureDecoder(samples);
    decoder.accept(file, 0, file.length);
    decoder.finish();
    samples.finish(decoder.counters().lastMicros());
  }
}
