package tripline.csv;

/**
 * What each column of a recording is to this reader.
 *
 * <p>Built once from the header; the arrays belong to the readers of rows and are not changed.
 */
final class Columns {
  static final byte IGNORED = 0;
  static final byte TIME = 1;
  static final byte POSITION = 2;
  static final byte CONTACT = 3;
  static final byte MARK = 4;

  private final byte[] kinds;
  private final byte[] channels;
  private final String[] names;

  /**
   * @param names column names
   * @param kinds kind of each column
   * @param channels channel index of each contact column
   */
  Columns(String[] names, byte[] kinds, byte[] channels) {
    this.names = names;
    this.kinds = kinds;
    this.channels = channels;
  }

  int count() {
    return kinds.length;
  }

  byte kind(int column) {
    return kinds[column];
  }

  /** Channel index of a contact column. */
  int channel(int column) {
    return channels[column];
  }

  String name(int column) {
    return names[column];
  }
}
