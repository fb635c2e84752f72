package tripline.harness.jobfile;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.tomlj.TomlArray;
import org.tomlj.TomlTable;

/** Places of every key of a sheet, by path: {@code contact[3].channel}. */
final class Places {
  private final Map<String, Place> places = new HashMap<>();

  Places(TomlTable sheet) {
    walk(sheet, "");
  }

  /** The place of a path, else of the nearest thing around it, else the top of the file. */
  Place of(String path) {
    String at = path;
    while (!at.isEmpty()) {
      Place place = places.get(at);
      if (place != null) {
        return place;
      }
      at = at.substring(0, Math.max(0, Math.max(at.lastIndexOf('.'), at.lastIndexOf('['))));
    }
    return Place.TOP;
  }

  /** Whether the sheet itself states something at a path. */
  boolean states(String path) {
    return places.containsKey(path);
  }

  private void walk(TomlTable table, String prefix) {
    for (String key : table.keySet()) {
      List<String> step = List.of(key);
      note(table.get(step), prefix + key, Place.of(table.inputPositionOf(step)));
    }
  }

  private void note(@Nullable Object value, String path, Place place) {
    places.put(path, place);
    if (value instanceof TomlTable table) {
      walk(table, path + ".");
    } else if (value instanceof TomlArray array) {
      for (int i = 0; i < array.size(); i++) {
        note(array.get(i), path + "[" + i + "]", Place.of(array.inputPositionOf(i)));
      }
    }
  }
}
