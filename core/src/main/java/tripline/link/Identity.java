package tripline.link;

/**
 * Who is speaking (SPEC §5, 01).
 *
 * @param major protocol version, 1-255
 * @param minor protocol version, 0-255
 * @param clockBits width of stamps, 32-53
 * @param contacts contact channels, 0-64
 * @param positions position channels, 0-1
 * @param encodings bit 0 frames, bit 1 lines
 * @param bodyLimit longest body it can receive, 64-512 bytes
 * @param abilities bits of {@link Ability}
 * @param session differs at every start of the clock, 32 bits
 * @param rateMinMilliHz lowest sampling rate, mHz
 * @param rateMaxMilliHz highest sampling rate, mHz
 * @param model at most 32 bytes of UTF-8
 * @param serial at most 32 bytes of UTF-8
 * @param firmware at most 32 bytes of UTF-8
 */
public record Identity(
    int major,
    int minor,
    int clockBits,
    int contacts,
    int positions,
    int encodings,
    int bodyLimit,
    long abilities,
    long session,
    long rateMinMilliHz,
    long rateMaxMilliHz,
    String model,
    String serial,
    String firmware)
    implements LinkMessage {

  /** Whether the logger has an ability. */
  public boolean can(Ability ability) {
    return (abilities & ability.bit()) != 0;
  }

  @Override
  public MessageType type() {
    return MessageType.IDENTITY;
  }

  @Override
  public int writeBody(byte[] body) {
    BodyWriter out = BodyWriter.begin(body, type());
    out.put8(IdentityLayout.MAJOR, major);
    out.put8(IdentityLayout.MINOR, minor);
    out.put8(IdentityLayout.CLOCK_BITS, clockBits);
    out.put8(IdentityLayout.CONTACTS, contacts);
    out.put8(IdentityLayout.POSITIONS, positions);
    out.put8(IdentityLayout.ENCODINGS, encodings);
    out.put16(IdentityLayout.BODY_LIMIT, bodyLimit);
    out.put32(IdentityLayout.ABILITIES, abilities);
    out.put32(IdentityLayout.SESSION, session);
    out.put32(IdentityLayout.RATE_MIN, rateMinMilliHz);
    out.put32(IdentityLayout.RATE_MAX, rateMaxMilliHz);
    out.strings(IdentityLayout.STRINGS);
    out.string(model);
    out.string(serial);
    out.string(firmware);
    return out.checked();
  }

  static Identity read(byte[] body) {
    BodyStrings strings = new BodyStrings(body, IdentityLayout.STRINGS);
    return new Identity(
        Le.u8(body, IdentityLayout.MAJOR),
        Le.u8(body, IdentityLayout.MINOR),
        Le.u8(body, IdentityLayout.CLOCK_BITS),
        Le.u8(body, IdentityLayout.CONTACTS),
        Le.u8(body, IdentityLayout.POSITIONS),
        Le.u8(body, IdentityLayout.ENCODINGS),
        Le.u16(body, IdentityLayout.BODY_LIMIT),
        Le.u32(body, IdentityLayout.ABILITIES),
        Le.u32(body, IdentityLayout.SESSION),
        Le.u32(body, IdentityLayout.RATE_MIN),
        Le.u32(body, IdentityLayout.RATE_MAX),
        strings.next(),
        strings.next(),
        strings.next());
  }
}
