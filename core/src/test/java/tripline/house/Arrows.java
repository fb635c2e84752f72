package tripline.house;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.Dependency;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import java.util.Map;
import java.util.Set;

/**
 * Which package may lean on which.
 *
 * @param root the package that holds them all; classes in itself may use everything below it
 * @param allowed by first name below the root: the first names it may use beside its own
 */
public record Arrows(String root, Map<String, Set<String>> allowed) {
  /** Every dependency between two packages below the root is one of those allowed. */
  public ArchRule rule() {
    return classes()
        .that(DescribedPredicate.describe("lie below " + root, c -> !room(c).isEmpty()))
        .should(
            new ArchCondition<>("lean only on the packages they may") {
              @Override
              public void check(JavaClass from, ConditionEvents events) {
                from.getDirectDependenciesFromSelf().stream()
                    .filter(d -> !allowed(from, d.getTargetClass()))
                    .map(Dependency::getDescription)
                    .forEach(text -> events.add(SimpleConditionEvent.violated(from, text)));
              }
            });
  }

  private boolean allowed(JavaClass from, JavaClass to) {
    if (!to.getPackageName().equals(root) && !to.getPackageName().startsWith(root + ".")) {
      return true;
    }
    String room = room(to);
    return room.equals(room(from)) || allowed.getOrDefault(room(from), Set.of()).contains(room);
  }

  /** First name below the root; empty for the root itself and for everything outside. */
  private String room(JavaClass type) {
    String name = type.getPackageName();
    return name.startsWith(root + ".") ? name.substring(root.length() + 1).split("\\.", 2)[0] : "";
  }
}
