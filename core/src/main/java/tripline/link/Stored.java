package tripline.link;

/**
 * One recording in the logger's memory (SPEC §5, 09).
 *
 * @param index 0 ... count - 1
 * @param count recordings in the list, at least 1
 * @param id names it in fetch, 32 bits
 * @param bytes its length, 32 bits
 * @param check CRC-32C of its bytes
 * @param samples 32 bits
 * @param startedMicros UTC, microseconds since 1970; 0 unknown
 * @param durationMicros its length in time
 * @param label at most 32 bytes of UTF-8
 */
public record Stored(
    int index,
    int count,
    long id,
    long bytes,
    long check,
    long samples,
    long startedMicros,
    long durationMicros,
    String label)
    implements LinkMessage {

  @Override
  public MessageType type() {
    return MessageType.STORED;
  }

  @Override
  public int writeBody(byte[] body) {
    BodyWriter out = BodyWriter.begin(body, type());
    out.put16(StoredLayout.INDEX, index);
    out.put16(StoredLayout.COUNT, count);
    out.put32(StoredLayout.ID, id);
    out.put32(StoredLayout.BYTES, bytes);
    out.put32(StoredLayout.CHECK, check);
    out.put32(StoredLayout.SAMPLES, samples);
    out.put64(StoredLayout.STARTED, startedMicros);
    out.put64(StoredLayout.DURATION, durationMicros);
    out.strings(StoredLayout.LABEL);
    out.string(label);
    return out.checked();
  }

  static Stored read(byte[] body) {
    BodyStrings strings = new BodyStrings(body, StoredLayout.LABEL);
    return new Stored(
        Le.u16(body, StoredLayout.INDEX),
        Le.u16(body, StoredLayout.COUNT),
        Le.u32(body, StoredLayout.ID),
        Le.u32(body, StoredLayout.BYTES),
        Le.u32(body, StoredLayout.CHECK),
        Le.u32(body, StoredLayout.SAMPLES),
        Le.i64(body, StoredLayout.STARTED),
        Le.i64(body, StoredLayout.DURATION),
        strings.next());
  }
}
