package tripline.harness.terminal;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import tripline.harness.terminal.KeyReader.Manner;
import tripline.sample.Mark;

class KeyReaderTest {
  private final List<Press> pressed = new ArrayList<>();

  private KeyReader reader(Manner manner) {
    return new KeyReader(manner, pressed::add);
  }

  private List<Press> read(Manner manner, String typed) {
    KeyReader reader = reader(manner);
    typed.chars().forEach(c -> reader.accept((char) c));
    return pressed;
  }

  private static Press press(Press.Key key) {
    return new Press(key, "");
  }

  @Test
  void eachKeyCountsAtOnceInEitherCase() {
    assertThat(read(Manner.KEYS, "cOaQ"))
        .containsExactly(
            press(Press.Key.CLOSED_STOP),
            press(Press.Key.OPEN_STOP),
            press(Press.Key.ADJUSTED),
            press(Press.Key.QUIT));
  }

  @Test
  void aKeyThatMeansNothingIsTold() {
    assertThat(read(Manner.KEYS, "z")).containsExactly(new Press(Press.Key.UNKNOWN, "z"));
  }

  /** Somebody leans on the space bar, or presses Enter after a letter out of habit. */
  @Test
  void blanksAndEnterAreNoKeys() {
    assertThat(read(Manner.KEYS, " c\r\n\t\u007f\u0000"))
        .containsExactly(press(Press.Key.CLOSED_STOP));
  }

  @Test
  void aNoteGoesOnToEnterAndItsLettersAreNoKeys() {
    KeyReader reader = reader(Manner.KEYS);
    "n co".chars().forEach(c -> reader.accept((char) c));
    assertThat(reader.note()).isEqualTo(" co");
    assertThat(pressed).isEmpty();
    "verx\u007f off \r".chars().forEach(c -> reader.accept((char) c));
    assertThat(reader.note()).isNull();
    assertThat(pressed).containsExactly(new Press(Press.Key.NOTE, "cover off"));
    reader.accept('q');
    assertThat(pressed).last().isEqualTo(press(Press.Key.QUIT));
  }

  @Test
  void aNoteCanBeGivenUp() {
    assertThat(read(Manner.KEYS, "nwrong\u001bo")).containsExactly(press(Press.Key.OPEN_STOP));
  }

  @Test
  void rubbingOutMoreThanThereIsDoesNoHarm() {
    assertThat(read(Manner.KEYS, "n\b\u007fok\n")).containsExactly(new Press(Press.Key.NOTE, "ok"));
  }

  @Test
  void aNoteIsNeverLongerThanTheLinkTakes() {
    read(Manner.KEYS, "n" + "x".repeat(500) + "\r");
    assertThat(pressed).singleElement().satisfies(p -> assertThat(p.text()).hasSize(100));
  }

  @Test
  void linesAreReadWhole() {
    assertThat(read(Manner.LINES, "c\n  o \r\n\n\nA\nn cover off\nn\nq\n"))
        .containsExactly(
            press(Press.Key.CLOSED_STOP),
            press(Press.Key.OPEN_STOP),
            press(Press.Key.ADJUSTED),
            new Press(Press.Key.NOTE, "cover off"),
            press(Press.Key.NOTE),
            press(Press.Key.QUIT));
  }

  /** "closed" is not the key c: nobody should mark a stop by a word that begins like it. */
  @Test
  void aLineThatIsNoKeyIsToldAndDoesNothing() {
    assertThat(read(Manner.LINES, "closed\nquit now\nx\nnote\n"))
        .containsExactly(
            new Press(Press.Key.UNKNOWN, "closed"),
            new Press(Press.Key.UNKNOWN, "quit now"),
            new Press(Press.Key.UNKNOWN, "x"),
            new Press(Press.Key.UNKNOWN, "note"));
  }

  @Test
  void aLineThatDoesNotEndIsNotReadYet() {
    assertThat(read(Manner.LINES, "q")).isEmpty();
  }

  @Test
  void onlyFourOfThemAreMarks() {
    assertThat(press(Press.Key.CLOSED_STOP).mark()).isEqualTo(Mark.CLOSED_STOP);
    assertThat(press(Press.Key.OPEN_STOP).mark()).isEqualTo(Mark.OPEN_STOP);
    assertThat(press(Press.Key.ADJUSTED).mark()).isEqualTo(Mark.ADJUSTED);
    assertThat(press(Press.Key.NOTE).mark()).isEqualTo(Mark.NOTE);
    assertThat(press(Press.Key.QUIT).mark()).isNull();
    assertThat(press(Press.Key.UNKNOWN).mark()).isNull();
  }
}
