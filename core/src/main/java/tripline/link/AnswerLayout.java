package tripline.link;

/** Where the fields of {@code answer} lie (SPEC §5, 08). */
final class AnswerLayout {
  static final int COMMAND = 4;
  static final int RESULT = 5;
  static final int TO = 6;
  static final int VALUE = 8;
  static final int END = 12;

  static final Layout LAYOUT =
      Layout.of(
          Field.u8("command", COMMAND, 0, 255),
          Field.word("result", RESULT, Result.values()),
          Field.u16("to", TO, 0, 0xffff),
          Field.u32("value", VALUE, 0));

  private AnswerLayout() {}
}
