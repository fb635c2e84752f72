package tripline.harness.jobfile;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tripline.csv.CsvLayout;
import tripline.csv.CsvTimeUnit;
import tripline.job.Acceptance;
import tripline.job.Cam;
import tripline.job.ClosedWhere;
import tripline.job.Contact;
import tripline.job.End;
import tripline.job.EndSetting;
import tripline.job.JobIdentity;
import tripline.job.JobSheet;
import tripline.job.PositionChannel;
import tripline.job.Role;
import tripline.job.Seat;
import tripline.job.SensorSide;
import tripline.job.TravelPlan;
import tripline.job.TripPlan;
import tripline.sample.Drive;

class JobFileTest {
  private static final Path SHEETS = Path.of("src/test/resources/sheets");

  @TempDir Path folder;

  @Test
  void everyKeyArrives() {
    JobFile file = JobFile.read(SHEETS.resolve("full.toml"));
    JobSheet sheet = file.sheet();
    assertThat(sheet.job())
        .isEqualTo(
            new JobIdentity(
                "CW-114", "Cooling-water return isolation, DN 300 wedge gate valve", "4471-C"));
    assertThat(sheet.travel())
        .isEqualTo(
            new TravelPlan(
                OptionalDouble.of(31),
                OptionalDouble.of(0.5),
                OptionalDouble.of(0.3),
                OptionalDouble.of(0.15),
                OptionalDouble.of(48),
                OptionalDouble.of(5)));
    assertThat(sheet.position())
        .isEqualTo(
            new PositionChannel(
                SensorSide.DRIVE,
                -0.5,
                0.0005,
                0.0002,
                1_200_000,
                400_000,
                OptionalDouble.of(65536)));
    assertThat(sheet.settleNs()).isEqualTo(15_000_000);
    assertThat(sheet.closed()).isEqualTo(new EndSetting(Seat.TORQUE, 0.5, 0.1, 0.01));
    assertThat(sheet.open()).isEqualTo(new EndSetting(Seat.LIMIT, 0.75, 0.15, 0.02));
    assertThat(sheet.cams())
        .containsExactly(
            new Cam("close", List.of()),
            new Cam("open", List.of(new TripPlan(End.OPEN, 0.75, 0.15, TripPlan.Unit.TURNS))),
            new Cam("lift", List.of(new TripPlan(End.CLOSED, 10, 2, TripPlan.Unit.PERCENT))),
            new Cam(
                "band",
                List.of(
                    new TripPlan(End.CLOSED, 40, 2, TripPlan.Unit.PERCENT),
                    new TripPlan(End.OPEN, 12, 0.5, TripPlan.Unit.TURNS))));
    assertThat(sheet.contacts()).hasSize(8);
    assertThat(sheet.contacts().get(4))
        .isEqualTo(
            new Contact(
                "33-34",
                "k5",
                "lift",
                ClosedWhere.CLOSED_SIDE,
                Role.BYPASS_OPENING,
                OptionalDouble.of(5)));
    assertThat(sheet.contacts().get(7).closed()).isEqualTo(ClosedWhere.INSIDE);
    assertThat(sheet.acceptance()).isEqualTo(new Acceptance(5, 0.9, 0.99));
    assertThat(sheet.channels().contacts())
        .containsExactly("k1", "k2", "k3", "k4", "k5", "k6", "k7", "k8", "t1", "t2", "m1", "m2");
    assertThat(sheet.motor(End.OPEN)).contains("m2");
    assertThat(file.layout())
        .isEqualTo(
            new CsvLayout(
                ';',
                ',',
                "Zeit",
                CsvTimeUnit.MS,
                "Weg",
                List.of("1", "ZU"),
                List.of("0", "AUF"),
                Optional.of(Drive.MOTOR)));
    assertThat(file.doubts()).isEmpty();
  }

  @Test
  void theContractsExampleLoads() {
    JobFile file = JobFile.read(SHEETS.resolve("contract.toml"));
    assertThat(file.sheet().cams())
        .extracting(Cam::name)
        .containsExactly("close", "quarter", "band");
    assertThat(file.sheet().settleNs()).isEqualTo(10_000_000);
    assertThat(file.doubts())
        .extracting(SheetNote::message)
        .anyMatch(m -> m.startsWith("no contact is on cam \"quarter\""))
        .anyMatch(m -> m.startsWith("no contact has role limit-opening"));
  }

  @Test
  void whatIsNotStatedIsTheUsualAndSaid() {
    JobFile file = JobFile.read(SHEETS.resolve("least.toml"));
    assertThat(file.sheet().closed()).isEqualTo(new EndSetting(Seat.LIMIT, 0.5, 0.1, 0.01));
    assertThat(file.sheet().position())
        .isEqualTo(
            new PositionChannel(SensorSide.HANDWHEEL, 1, 0, 0, 0, 0, OptionalDouble.empty()));
    assertThat(file.sheet().settleNs()).isEqualTo(10_000_000);
    assertThat(file.sheet().acceptance()).isEqualTo(Acceptance.DEFAULT);
    assertThat(file.sheet().torqueClosing()).isEmpty();
    assertThat(file.layout()).isEqualTo(CsvLayout.DEFAULT);
    assertThat(file.doubts())
        .extracting(SheetNote::message)
        .anyMatch(m -> m.startsWith("ends.closed is not stated in full"))
        .anyMatch(m -> m.startsWith("position.side is not stated"))
        .anyMatch(m -> m.startsWith("position.turns_per_unit is not stated"))
        .anyMatch(m -> m.startsWith("no span is stated"));
  }

  @Test
  void aByteOrderMarkAndWindowsLineEndsMeanNothing() throws IOException {
    String text = Files.readString(SHEETS.resolve("full.toml"));
    Path windows = folder.resolve("windows.toml");
    Files.writeString(windows, "\uFEFF" + text.replace("\n", "\r\n"));
    JobFile plain = JobFile.read(SHEETS.resolve("full.toml"));
    assertThat(JobFile.read(windows).sheet()).isEqualTo(plain.sheet());
    assertThat(JobFile.read(windows).layout()).isEqualTo(plain.layout());
  }

  /** FIPS 180-4 example: the digest of "abc" (from memory). */
  @Test
  void theDigestIsThatOfTheBytes() throws IOException {
    Path abc = folder.resolve("abc");
    Files.write(abc, "abc".getBytes(StandardCharsets.US_ASCII));
    assertThat(SheetText.read(abc).sha256())
        .isEqualTo("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  }
}
