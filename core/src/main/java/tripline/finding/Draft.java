package tripline.finding;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import tripline.develop.Stroke;
import tripline.develop.Trip;
import tripline.job.Contact;
import tripline.measure.Estimate;

/** A finding in the making. */
final class Draft {
  private final Code code;
  private Severity severity;
  private final Set<String> contacts = new LinkedHashSet<>();
  private final Set<String> cams = new LinkedHashSet<>();
  private OptionalInt recording = OptionalInt.empty();
  private OptionalInt stroke = OptionalInt.empty();
  private OptionalDouble timeS = OptionalDouble.empty();
  private final Map<String, Object> evidence = new LinkedHashMap<>();

  private Draft(Code code) {
    this.code = code;
    this.severity = code.severity();
  }

  static Draft of(Code code) {
    return new Draft(code);
  }

  Draft severity(Severity other) {
    severity = other;
    return this;
  }

  Draft contact(Contact contact) {
    contacts.add(contact.name());
    cams.add(contact.cam());
    return this;
  }

  Draft cam(String cam) {
    cams.add(cam);
    return this;
  }

  Draft recording(int index) {
    recording = OptionalInt.of(index);
    return this;
  }

  /** Stroke, recording and the time the stroke ended. */
  Draft stroke(Stroke where) {
    stroke = OptionalInt.of(where.number());
    return at(where.recording(), where.endS());
  }

  /** Stroke, recording and time of a change. */
  Draft trip(Trip trip) {
    stroke = trip.stroke() < 0 ? OptionalInt.empty() : OptionalInt.of(trip.stroke());
    return at(trip.recording(), trip.timeS());
  }

  Draft stroke(int number) {
    stroke = number < 0 ? OptionalInt.empty() : OptionalInt.of(number);
    return this;
  }

  Draft at(int recordingIndex, double seconds) {
    recording = OptionalInt.of(recordingIndex);
    timeS = OptionalDouble.of(seconds);
    return this;
  }

  Draft evidence(String name, double figure) {
    evidence.put(name, figure);
    return this;
  }

  Draft evidence(String name, long count) {
    evidence.put(name, count);
    return this;
  }

  Draft evidence(String name, String text) {
    evidence.put(name, text);
    return this;
  }

  Draft evidence(String name, OptionalDouble figure) {
    figure.ifPresent(value -> evidence.put(name, value));
    return this;
  }

  /** A figure and, under {@code name_u}, its standard uncertainty. */
  Draft evidence(String name, Estimate figure) {
    evidence.put(name, figure.value());
    evidence.put(name + "_u", figure.u());
    return this;
  }

  Draft evidence(String name, Optional<Estimate> figure) {
    figure.ifPresent(value -> evidence(name, value));
    return this;
  }

  Finding says(String message, String action) {
    return new Finding(
        code, severity, contacts, cams, recording, stroke, timeS, message, evidence, action);
  }
}
