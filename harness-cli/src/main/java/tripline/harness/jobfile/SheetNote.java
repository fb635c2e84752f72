package tripline.harness.jobfile;

/**
 * Something noticed about a sheet.
 *
 * @param line where, from 1
 * @param column where, in characters from 1
 * @param message what, one line, no full stop
 */
public record SheetNote(long line, long column, String message) {}
