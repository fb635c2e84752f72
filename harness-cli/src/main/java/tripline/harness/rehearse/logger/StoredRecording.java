package tripline.harness.rehearse.logger;

import java.util.Arrays;
import java.util.zip.CRC32C;
import tripline.link.Stored;

/** A recording in a logger's memory: a link stream of its own (SPEC §5, 0A). */
public final class StoredRecording {
  private final long id;
  private final byte[] bytes;
  private final long samples;
  private final long startedMicros;
  private final long durationMicros;
  private final String label;

  /**
   * @param id names it in fetch, 32 bits
   * @param bytes a zero byte, then frames as they were sent
   * @param samples rows in it
   * @param startedMicros UTC, microseconds since 1970; 0 unknown
   * @param durationMicros its length in time
   * @param label at most 32 bytes of UTF-8
   */
  public StoredRecording(
      long id, byte[] bytes, long samples, long startedMicros, long durationMicros, String label) {
    this.id = id;
    this.bytes = bytes.clone();
    this.samples = samples;
    this.startedMicros = startedMicros;
    this.durationMicros = durationMicros;
    this.label = label;
  }

  long id() {
    return id;
  }

  int length() {
    return bytes.length;
  }

  byte[] part(int from, int to) {
    return Arrays.copyOfRange(bytes, from, to);
  }

  /** Its entry in the list. */
  Stored entry(int index, int count) {
    CRC32C crc = new CRC32C();
    crc.update(bytes);
    return new Stored(
        index,
        count,
        id,
        bytes.length,
        crc.getValue(),
        samples,
        startedMicros,
        durationMicros,
        label);
  }
}
