package tripline.develop;

import tripline.job.PositionChannel;
import tripline.reduce.Reduction;
import tripline.reduce.ReductionSettings;
import tripline.sample.Channels;
import tripline.sample.Drive;
import tripline.travel.RecordingTrace;
import tripline.travel.RecordingTrace.Zero;
import tripline.truth.Logger;
import tripline.truth.LoggerPlan;
import tripline.truth.Rng;
import tripline.truth.Sensor;
import tripline.truth.Wiring;

/** Records a job through a logger and reduces it: the explaining half on real reductions. */
final class Recorder {
  private final Logger logger;
  private final PositionChannel channel;

  Recorder(LoggerPlan plan, Sensor sensor, PositionChannel channel) {
    logger = new Logger(plan, sensor);
    this.channel = channel;
  }

  RecordingTrace record(HandJob job, Zero zero, long seed) {
    Rng rng = new Rng(seed);
    Channels channels = new Channels(job.actuator.plan().channels());
    Reduction reduction =
        new Reduction(
            new ReductionSettings(
                channels,
                10_000_000L,
                channel.skewNs(),
                channel.resolution(),
                channel.modulus(),
                channel.turnsPerUnit()));
    logger.record(
        job.actuator.path(),
        new Wiring().timeline(job.actuator, rng.split("bounce")),
        channels.size(),
        job.actuator.marks(),
        rng.split("logger"),
        reduction);
    return new RecordingTrace(
        "recording.csv",
        "",
        job.powered.isEmpty() ? Drive.HAND : Drive.MOTOR,
        zero,
        reduction.finish());
  }
}
