package tripline.link;

/**
 * What one input of the logger is (SPEC §5, 02).
 *
 * @param kindCode see {@link #kind}
 * @param number of its kind, 0-63; a contact's is its bit in masks
 * @param closedLevel contact: the level that means closed, 0-1
 * @param reportsCode see {@link #reports}
 * @param numerator units per count = numerator / denominator; not 0 for a position
 * @param denominator at least 1, 32 bits
 * @param modulus counts after which the count wraps, 0: it does not; 32 bits
 * @param delayNs from what happened at the input to its stamp, ns, 32 bits
 * @param resolutionNs of hardware stamps, ns, 32 bits
 * @param name 1-32 bytes of UTF-8
 * @param unit of the reading, at most 16 bytes of UTF-8
 */
public record ChannelDescription(
    int kindCode,
    int number,
    int closedLevel,
    int reportsCode,
    int numerator,
    long denominator,
    long modulus,
    long delayNs,
    long resolutionNs,
    String name,
    String unit)
    implements LinkMessage {

  /** What it measures. */
  public ChannelKind kind() {
    return ChannelKind.of(kindCode);
  }

  /** How it is reported. */
  public Reports reports() {
    return Reports.of(reportsCode);
  }

  /** A position channel reported in rows: reading = counts × numerator / denominator. */
  public static ChannelDescription position(
      String name, String unit, int numerator, long denominator, long modulus, long delayNs) {
    return new ChannelDescription(
        ChannelKind.POSITION.code(),
        0,
        0,
        Reports.SAMPLED.code(),
        numerator,
        denominator,
        modulus,
        delayNs,
        0,
        name,
        unit);
  }

  /** A contact channel. */
  public static ChannelDescription contact(
      int number, String name, int closedLevel, Reports reports, long delayNs, long resolutionNs) {
    return new ChannelDescription(
        ChannelKind.CONTACT.code(),
        number,
        closedLevel,
        reports.code(),
        0,
        1,
        0,
        delayNs,
        resolutionNs,
        name,
        "");
  }

  @Override
  public MessageType type() {
    return MessageType.CHANNEL;
  }

  @Override
  public int writeBody(byte[] body) {
    BodyWriter out = BodyWriter.begin(body, type());
    out.put8(ChannelLayout.KIND, kindCode);
    out.put8(ChannelLayout.NUMBER, number);
    out.put8(ChannelLayout.CLOSED_LEVEL, closedLevel);
    out.put8(ChannelLayout.REPORTS, reportsCode);
    out.put32(ChannelLayout.NUMERATOR, numerator);
    out.put32(ChannelLayout.DENOMINATOR, denominator);
    out.put32(ChannelLayout.MODULUS, modulus);
    out.put32(ChannelLayout.DELAY, delayNs);
    out.put32(ChannelLayout.RESOLUTION, resolutionNs);
    out.strings(ChannelLayout.STRINGS);
    out.string(name);
    out.string(unit);
    return out.checked();
  }

  static ChannelDescription read(byte[] body) {
    BodyStrings strings = new BodyStrings(body, ChannelLayout.STRINGS);
    return new ChannelDescription(
        Le.u8(body, ChannelLayout.KIND),
        Le.u8(body, ChannelLayout.NUMBER),
        Le.u8(body, ChannelLayout.CLOSED_LEVEL),
        Le.u8(body, ChannelLayout.REPORTS),
        Le.i32(body, ChannelLayout.NUMERATOR),
        Le.u32(body, ChannelLayout.DENOMINATOR),
        Le.u32(body, ChannelLayout.MODULUS),
        Le.u32(body, ChannelLayout.DELAY),
        Le.u32(body, ChannelLayout.RESOLUTION),
        strings.next(),
        strings.next());
  }
}
