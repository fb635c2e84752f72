package tripline.capture;

/**
 * What became of the bytes of a capture. Always {@code bytes} = bytes of records, lead and
 * delimiters + {@code skipped} + {@code cut}.
 *
 * @param bytes of the file
 * @param records handed on
 * @param unknown whole records that this version does not know, set aside
 * @param damaged units that are no whole record
 * @param skipped their bytes
 * @param cut bytes of a last unit that the file ends in
 * @param missingRecords records missing between those read, modulo 65536
 * @param missingBytes bytes of the logger that were kept and are missing, modulo 2^32
 * @param lastMicros host's time of the last record, microseconds since the capture began
 */
public record CaptureCounters(
    long bytes,
    long records,
    long unknown,
    long damaged,
    long skipped,
    long cut,
    long missingRecords,
    long missingBytes,
    long lastMicros) {}
