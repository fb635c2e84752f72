package tripline.finding;

import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import tripline.assess.Assessment;
import tripline.travel.Caveat;

/**
 * {@code recording-apart}: what could not be brought together with the rest, and why: a recording,
 * a reference, or a stop that contradicts the strokes.
 */
final class RecordingApart implements Look {
  private static final String KIND = "kind";
  private static final String CAUSE =
      " The marks are exchanged, or position.turns_per_unit has the wrong sign.";

  @Override
  public void look(Assessment assessment, FindingSink sink) {
    List<Caveat> doubts = assessment.development().doubts();
    Set<Integer> exchanged = new HashSet<>();
    for (Caveat doubt : doubts) {
      if (doubt.kind() != Caveat.Kind.ENDS_EXCHANGED) {
        sink.onFinding(finding(doubt, doubt.message()));
      } else if (exchanged.add(doubt.recording())) {
        sink.onFinding(finding(doubt, allOf(doubt, doubts) + CAUSE));
      }
    }
  }

  private static Finding finding(Caveat doubt, String message) {
    Draft draft = Draft.of(Code.RECORDING_APART).evidence(KIND, word(doubt.kind()));
    if (doubt.recording() >= 0) {
      draft.recording(doubt.recording());
    }
    return draft.says(message, action(doubt.kind()));
  }

  /** Both ends of a recording have one cause. */
  private static String allOf(Caveat doubt, List<Caveat> doubts) {
    return doubts.stream()
        .filter(d -> d.kind() == doubt.kind() && d.recording() == doubt.recording())
        .map(Caveat::message)
        .collect(Collectors.joining(" "));
  }

  /** Whether it says that readings or marks may be the wrong way round. */
  static boolean saysEndsExchanged(Finding finding) {
    return finding.code() == Code.RECORDING_APART
        && word(Caveat.Kind.ENDS_EXCHANGED).equals(finding.evidence().get(KIND));
  }

  private static String word(Caveat.Kind kind) {
    return kind.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  private static String action(Caveat.Kind kind) {
    return switch (kind) {
      case RECORDING_WITHOUT_PLACE ->
          "Record it again in one go with a hand stroke, with the position zero kept, or hand in a"
              + " reference.";
      case REFERENCE_NOT_USED ->
          "Touch both stops by hand with the logger running, or hand in a reference of the same"
              + " setting.";
      case MARK_NOT_AT_STOP ->
          "Run to that stop by hand once more and press its mark while the handwheel stands hard"
              + " against it.";
      case ENDS_EXCHANGED ->
          "Does the reading rise while the valve opens? Then position.turns_per_unit is positive,"
              + " else negative; put the sheet right first. If it is right, record again and press"
              + " each mark at its own stop.";
    };
  }
}
