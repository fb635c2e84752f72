package tripline.link;

import java.util.Arrays;
import java.util.Objects;

/** Part of a stored recording (SPEC §5, 0A). */
public final class Piece implements LinkMessage {
  private final long id;
  private final long offset;
  private final byte[] data;

  /**
   * @param id of the recording, 32 bits
   * @param offset of the first byte in the recording, 32 bits
   * @param data 1-480 bytes, copied
   */
  public Piece(long id, long offset, byte[] data) {
    this.id = id;
    this.offset = offset;
    this.data = data.clone();
  }

  /** Which recording. */
  public long id() {
    return id;
  }

  /** Of the first byte in the recording. */
  public long offset() {
    return offset;
  }

  /** A copy of the bytes. */
  public byte[] data() {
    return data.clone();
  }

  @Override
  public MessageType type() {
    return MessageType.PIECE;
  }

  @Override
  public int writeBody(byte[] body) {
    BodyWriter out = BodyWriter.begin(body, type());
    out.put32(PieceLayout.ID, id);
    out.put32(PieceLayout.OFFSET, offset);
    return out.data(data);
  }

  static Piece read(byte[] body) {
    int length = Le.u16(body, PieceLayout.LENGTH);
    return new Piece(
        Le.u32(body, PieceLayout.ID),
        Le.u32(body, PieceLayout.OFFSET),
        Arrays.copyOfRange(body, PieceLayout.DATA, PieceLayout.DATA + length));
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Piece piece
        && piece.id == id
        && piece.offset == offset
        && Arrays.equals(piece.data, data);
  }

  @Override
  public int hashCode() {
    return Objects.hash(id, offset, Arrays.hashCode(data));
  }

  @Override
  public String toString() {
    return "Piece[id=" + id + ", offset=" + offset + ", length=" + data.length + "]";
  }
}
