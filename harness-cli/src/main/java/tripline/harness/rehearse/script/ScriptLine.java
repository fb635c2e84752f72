package tripline.harness.rehearse.script;

/**
 * A line and what it says.
 *
 * @param text as written
 * @param action what to do
 */
public record ScriptLine(String text, Action action) {}
