package tripline.house;

import static com.tngtech.archunit.base.DescribedPredicate.describe;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.conditions.ArchConditions.be;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.lang.ArchRule;
import java.io.Serializable;
import java.util.Set;
import org.jspecify.annotations.NullMarked;

/** What no class of a module may do, whatever package it lies in. */
public final class Prohibitions {
  private static final Set<String> OF_SYSTEM =
      Set.of("out", "err", "in", "currentTimeMillis", "nanoTime", "getenv", "exit");

  private Prohibitions() {}

  /** Results must depend on the samples alone: no file, socket, thread, clock, stream or chance. */
  public static ArchRule noOutsideWorld() {
    DescribedPredicate<JavaClass> world =
        describe(
            "are files, sockets, streams or threads",
            type ->
                resideInAnyPackage("java.net..", "java.nio.file..", "java.nio.channels..")
                        .or(resideInAnyPackage("java.util.concurrent..", "java.util.logging.."))
                        .test(type)
                    || (type.getPackageName().equals("java.io")
                        && !type.isEquivalentTo(Serializable.class))
                    || type.isEquivalentTo(Thread.class)
                    || type.isEquivalentTo(ThreadLocal.class)
                    || type.isEquivalentTo(Process.class)
                    || type.isEquivalentTo(Runtime.class)
                    || type.isEquivalentTo(java.time.Clock.class)
                    || type.isEquivalentTo(java.util.Timer.class));
    return noClasses()
        .should()
        .dependOnClassesThat(world)
        .orShould()
        .accessTargetWhere(describe("reads a clock, a stream or chance", Prohibitions::escapes));
  }

  private static boolean escapes(JavaAccess<?> access) {
    JavaClass owner = access.getTargetOwner();
    String name = access.getTarget().getName();
    return (owner.isEquivalentTo(System.class) && OF_SYSTEM.contains(name))
        || (owner.getPackageName().startsWith("java.time") && name.equals("now"))
        || (owner.isEquivalentTo(Math.class) && name.equals("random"))
        || name.equals("randomUUID")
        || name.equals("printStackTrace");
  }

  /** A public class is closed to extension: final, sealed, a record, an enum or an interface. */
  public static ArchRule closedToExtension() {
    return classes()
        .that()
        .arePublic()
        .should(
            be(
                describe(
                    "final, sealed, a record, an enum or an interface",
                    type ->
                        type.getModifiers().contains(JavaModifier.FINAL)
                            || type.isInterface()
                            || type.isEnum()
                            || type.reflect().isSealed())));
  }

  /** Names say what a thing is; these four say nothing. */
  public static ArchRule tellingNames() {
    return noClasses().should().haveNameMatching(".*(Impl|Manager|Helpers?|Utils?)(\\$.*)?");
  }

  /** Every package states its nullness. */
  public static ArchRule statedNullness() {
    return classes()
        .should(
            be(
                describe(
                    "in a package marked @NullMarked",
                    type ->
                        type.getSimpleName().equals("module-info")
                            || type.reflect().getPackage().isAnnotationPresent(NullMarked.class))));
  }

  /** A library (a package pattern) that only the classes described may know. */
  public static ArchRule onlyIn(String library, DescribedPredicate<? super JavaClass> rooms) {
    return noClasses()
        .that(DescribedPredicate.not(rooms))
        .should()
        .dependOnClassesThat(resideInAnyPackage(library))
        .allowEmptyShould(true);
  }
}
