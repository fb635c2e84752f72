package tripline.harness.jobfile;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tripline.csv.CsvLayout;
import tripline.csv.CsvTimeUnit;
import tripline.job.JobSheet;
import tripline.sample.Drive;

/** {@code [recording]}: how a foreign logger writes its files. */
final class RecordingSection {
  private static final Map<String, Character> SEPARATORS = new LinkedHashMap<>();
  private static final Map<String, Character> DECIMALS = Words.inOrder(".", '.', ",", ',');
  private static final Map<String, Drive> DRIVES =
      Words.inOrder("hand", Drive.HAND, "motor", Drive.MOTOR);
  private static final Map<String, CsvTimeUnit> UNITS = new LinkedHashMap<>();

  static {
    for (char c : new char[] {',', ';', '\t', '|', ' '}) {
      SEPARATORS.put(String.valueOf(c), c);
    }
    for (CsvTimeUnit unit : CsvTimeUnit.values()) {
      UNITS.put(unit.word(), unit);
    }
  }

  private RecordingSection() {}

  static CsvLayout read(Section recording, Notes notes) {
    CsvLayout usual = CsvLayout.DEFAULT;
    char separator = recording.choice("separator", SEPARATORS).orElse(usual.separator());
    char decimal = recording.choice("decimal", DECIMALS).orElse(usual.decimal());
    if (separator == decimal) {
      notes.doubt(
          recording.path(recording.has("decimal") ? "decimal" : "separator"),
          "separator and decimal mark are both a comma: numbers must be quoted in the recording");
    }
    Optional<String> time = recording.text("time", TextRule.NAME);
    CsvTimeUnit unit = recording.choice("time_unit", UNITS).orElse(usual.timeUnit());
    Optional<String> position = recording.text("position", TextRule.NAME);
    List<String> closed = words(recording.texts("closed", TextRule.NAME), usual.closed());
    List<String> open = words(recording.texts("open", TextRule.NAME), usual.open());
    Optional<Drive> drive = recording.choice("drive", DRIVES);
    recording.close();
    String timeName = time.orElse(usual.time());
    String positionName = position.orElse(usual.position());
    if (distinct(recording, timeName, positionName, notes)
        && apart(recording, closed, open, notes)) {
      return new CsvLayout(separator, decimal, timeName, unit, positionName, closed, open, drive);
    }
    return usual;
  }

  private static List<String> words(@Nullable List<String> stated, List<String> usual) {
    return stated == null ? usual : stated;
  }

  private static boolean distinct(Section recording, String time, String position, Notes notes) {
    boolean right = true;
    if (time.equals(CsvLayout.MARK)) {
      recording.wrong("time", Values.quoted(time), "another name: that column holds the marks");
      right = false;
    }
    if (position.equals(CsvLayout.MARK)) {
      recording.wrong(
          "position", Values.quoted(position), "another name: that column holds the marks");
      right = false;
    }
    if (time.equals(position)) {
      String key = recording.has("position") ? "position" : "time";
      notes.error(
          recording.path(key),
          "time and position are both column %s, expected two columns"
              .formatted(Values.quoted(time)));
      right = false;
    }
    return right;
  }

  private static boolean apart(
      Section recording, List<String> closed, List<String> open, Notes notes) {
    List<String> folded = closed.stream().map(RecordingSection::fold).toList();
    Optional<String> both = open.stream().filter(w -> folded.contains(fold(w))).findFirst();
    both.ifPresent(
        word ->
            notes.error(
                recording.path(recording.has("open") ? "open" : "closed"),
                "%s means both closed and open, expected words of their own for both states"
                    .formatted(Values.quoted(word))));
    return both.isEmpty();
  }

  private static String fold(String word) {
    return word.strip().toLowerCase(Locale.ROOT);
  }

  /** Channels that name a column which holds something else. */
  static void columns(JobSheet sheet, CsvLayout layout, Notes notes) {
    Map<String, String> taken =
        Words.inOrder(layout.time(), "the time", layout.position(), "the position");
    taken.put(CsvLayout.MARK, "the marks");
    for (int i = 0; i < sheet.contacts().size(); i++) {
      column("contact[" + i + "].channel", sheet.contacts().get(i).channel(), taken, notes);
    }
    sheet.torqueClosing().ifPresent(c -> column("torque.closing.channel", c, taken, notes));
    sheet.torqueOpening().ifPresent(c -> column("torque.opening.channel", c, taken, notes));
    sheet.motorClosing().ifPresent(c -> column("motor.closing.channel", c, taken, notes));
    sheet.motorOpening().ifPresent(c -> column("motor.opening.channel", c, taken, notes));
  }

  private static void column(String path, String channel, Map<String, String> taken, Notes notes) {
    String holds = taken.get(channel);
    if (holds != null) {
      notes.error(
          path,
          "channel %s is the column of %s, expected a contact's column"
              .formatted(Values.quoted(channel), holds));
    }
  }
}
