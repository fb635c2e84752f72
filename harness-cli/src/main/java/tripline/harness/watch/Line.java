package tripline.harness.watch;

import java.util.ArrayList;
import java.util.List;
import tripline.harness.report.Columns;
import tripline.harness.report.Glyphs;

/**
 * One line of the screen.
 *
 * @param pieces from left to right
 */
record Line(List<Piece> pieces) {
  static final Line EMPTY = new Line(List.of());

  /** Text of one look. */
  record Piece(String text, Look look) {}

  Line {
    pieces = List.copyOf(pieces);
  }

  static Line of(String text) {
    return of(text, Look.PLAIN);
  }

  static Line of(String text, Look look) {
    return new Line(List.of(new Piece(text, look)));
  }

  /** With more text behind it. */
  Line and(String text, Look look) {
    List<Piece> more = new ArrayList<>(pieces);
    more.add(new Piece(text, look));
    return new Line(more);
  }

  Line and(String text) {
    return and(text, Look.PLAIN);
  }

  /** With another line behind it. */
  Line and(Line other) {
    List<Piece> more = new ArrayList<>(pieces);
    more.addAll(other.pieces);
    return new Line(more);
  }

  /** Cut or filled up to exactly so many columns. */
  Line fit(int columns, Glyphs glyphs) {
    List<Piece> fitted = new ArrayList<>();
    int left = columns;
    for (Piece piece : pieces) {
      int width = Columns.width(piece.text);
      if (left > 0) {
        boolean fits = width <= left;
        String text = fits ? piece.text : Columns.fit(piece.text, left, glyphs.cutMark());
        fitted.add(new Piece(text, piece.look));
      }
      left -= Math.min(left, width);
    }
    if (left > 0) {
      Look last = fitted.isEmpty() ? Look.PLAIN : fitted.get(fitted.size() - 1).look;
      fitted.add(new Piece(" ".repeat(left), last == Look.BAR ? Look.BAR : Look.PLAIN));
    }
    return new Line(fitted);
  }

  /** The text alone. */
  String text() {
    StringBuilder all = new StringBuilder();
    pieces.forEach(p -> all.append(p.text));
    return all.toString();
  }

  /** As a terminal takes it (ECMA-48). */
  String drawn(Look.Colour colour) {
    StringBuilder all = new StringBuilder();
    for (Piece piece : pieces) {
      String sgr = piece.look.sgr(colour);
      if (sgr.isEmpty() || piece.text.isEmpty()) {
        all.append(piece.text);
      } else {
        all.append("\u001b[").append(sgr).append('m').append(piece.text).append("\u001b[0m");
      }
    }
    return all.toString();
  }
}
