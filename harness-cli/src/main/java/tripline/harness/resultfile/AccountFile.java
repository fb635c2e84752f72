package tripline.harness.resultfile;

import java.nio.file.Path;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Optional;
import tripline.compare.Account;
import tripline.compare.Account.Origin;

/**
 * What a result file says of one setting.
 *
 * @param file as the user named it
 * @param which of its settings
 * @param account what it says
 * @param started when its recordings began, by the logger's clock, the first that states it
 */
public record AccountFile(String file, Which which, Account account, Optional<Instant> started) {
  /** More than any chart has; each is compared with each. */
  private static final int MOST_CONTACTS = 1000;

  /** Which setting of a result. */
  public enum Which {
    /** The first: before anything was adjusted. */
    AS_FOUND,
    /** The one that was judged: the last. */
    AS_LEFT
  }

  /**
   * Reads one setting of a result file.
   *
   * @throws tripline.harness.failure.InputFailure if the file is no result
   */
  public static AccountFile read(Path path, Which which) {
    return of(ResultFile.read(path), which);
  }

  /** One setting of a result that was read. */
  public static AccountFile of(ResultFile result, Which which) {
    Field root = result.root();
    Field job = root.key("job");
    List<Field> recordings = root.list("recordings");
    int judged = Settings.judged(root);
    List<Field> earlier = root.list("as_found");
    boolean found = which == Which.AS_FOUND && !earlier.isEmpty();
    Field told = found ? earlier.get(0) : root;
    int setting = found ? told.count("setting") : judged;
    List<Field> contacts = told.list("contacts");
    List<Field> cams = told.list("cams");
    if (contacts.size() > MOST_CONTACTS || cams.size() > MOST_CONTACTS) {
      throw told.wrong("charts more contacts or cams than it can", "at most " + MOST_CONTACTS);
    }
    Account account =
        new Account(
            result.tag(),
            new Origin(
                result.sha256(),
                setting,
                job.text("sha256"),
                recordings.stream().map(r -> r.text("sha256")).toList(),
                root.optional("reference").map(r -> r.text("sha256"))),
            found ? Optional.empty() : Optional.of(Parts.decision(root, "decision")),
            Parts.travel(root.key("travel")),
            cams.stream().map(Parts::cam).toList(),
            contacts.stream().map(Parts::contact).toList(),
            Parts.ends(told.key("ends")));
    return new AccountFile(
        result.file(),
        found ? Which.AS_FOUND : Which.AS_LEFT,
        account,
        recordings.stream().flatMap(r -> started(r).stream()).findFirst());
  }

  private static Optional<Instant> started(Field recording) {
    try {
      return recording.optionalText("started").map(Instant::parse);
    } catch (DateTimeParseException e) {
      throw recording.wrong("has a started that is no time", "one like 2026-03-02T08:14:05Z");
    }
  }

  /** Whether the result tells of an earlier setting as well. */
  public static boolean tellsAsFound(ResultFile result) {
    return !result.root().list("as_found").isEmpty();
  }
}
