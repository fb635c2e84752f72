package tripline.job;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tripline.sample.Channels;

/** Names that must stand once, and names that must be known. */
final class NameSense {
  private NameSense() {}

  static void check(JobSheet sheet, Remarks remarks) {
    once("cam", sheet.cams().stream().map(Cam::name).toList(), remarks);
    once("contact", sheet.contacts().stream().map(Contact::name).toList(), remarks);
    channels(sheet, remarks);
    cams(sheet, remarks);
  }

  private static void once(String list, List<String> names, Remarks remarks) {
    Map<String, Integer> first = new HashMap<>();
    for (int i = 0; i < names.size(); i++) {
      Integer before = first.putIfAbsent(names.get(i), i);
      if (before != null) {
        remarks.error(
            list + "[" + i + "].name",
            "%s name \"%s\" stands twice, expected a name of its own for every %s"
                .formatted(list, names.get(i), list),
            list + "[" + before + "].name");
      }
    }
  }

  private record Reader(String path, String words, String channel) {}

  private static void channels(JobSheet sheet, Remarks remarks) {
    Map<String, Reader> readers = new LinkedHashMap<>();
    for (int i = 0; i < sheet.contacts().size(); i++) {
      Contact contact = sheet.contacts().get(i);
      String words = "contact " + contact.name();
      read(new Reader(Remarks.contact(i, "channel"), words, contact.channel()), readers, remarks);
    }
    read("torque.closing", sheet.torqueClosing(), readers, remarks);
    read("torque.opening", sheet.torqueOpening(), readers, remarks);
    read("motor.closing", sheet.motorClosing(), readers, remarks);
    read("motor.opening", sheet.motorOpening(), readers, remarks);
    if (readers.size() > Channels.MOST_CONTACTS) {
      remarks.error(
          List.copyOf(readers.values()).get(Channels.MOST_CONTACTS).path(),
          "%d channels, expected at most %d".formatted(readers.size(), Channels.MOST_CONTACTS));
    }
  }

  private static void read(
      String path, Optional<String> channel, Map<String, Reader> readers, Remarks remarks) {
    channel.ifPresent(c -> read(new Reader(path + ".channel", path, c), readers, remarks));
  }

  private static void read(Reader reader, Map<String, Reader> readers, Remarks remarks) {
    Reader before = readers.putIfAbsent(reader.channel(), reader);
    if (before != null) {
      remarks.error(
          reader.path(),
          "channel \"%s\" is already read by %s, expected a channel of its own for %s"
              .formatted(reader.channel(), before.words(), reader.words()),
          before.path());
    }
  }

  private static void cams(JobSheet sheet, Remarks remarks) {
    List<String> names = sheet.cams().stream().map(Cam::name).toList();
    for (int i = 0; i < sheet.contacts().size(); i++) {
      String cam = sheet.contacts().get(i).cam();
      if (!names.contains(cam)) {
        String meant =
            NearestName.of(cam, names).map(nearest -> "; meant: \"" + nearest + "\"?").orElse("");
        remarks.error(
            Remarks.contact(i, "cam"),
            "no cam is named \"%s\", expected the name of a [[cam]]%s".formatted(cam, meant),
            "cam[*].name");
      }
    }
    for (int i = 0; i < names.size(); i++) {
      String name = names.get(i);
      if (sheet.contacts().stream().noneMatch(c -> c.cam().equals(name))) {
        remarks.doubt(
            Remarks.cam(i, "name"),
            "no contact is on cam \"%s\": whether it trips cannot be seen".formatted(name),
            "contact[*].cam");
      }
    }
  }
}
