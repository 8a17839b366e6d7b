package withers;

import static com.tngtech.archunit.base.DescribedPredicate.describe;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaCodeUnitAccess;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import java.time.Clock;
import java.util.Collection;
import java.util.Date;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.concurrent.ThreadLocalRandom;
import java.util.regex.Pattern;
import org.jspecify.annotations.NullMarked;

/** The words that the sentences of {@link ArchitectureTest} are made of. */
final class CodeUnits {
  private static final Set<String> WAYS_TO_THE_MACHINE_S_CLOCK =
      Set.of(
          "systemUTC", "systemDefaultZone", "system", "tickSeconds", "tickMillis", "tickMinutes");
  private static final List<Class<?>> COLLECTIONS = List.of(Collection.class, Map.class);

  private CodeUnits() {}

  static DescribedPredicate<JavaClass> in_module(String... modules) {
    Pattern place =
        Pattern.compile(".*/(%s)(/target/|-\\d).*".formatted(String.join("|", modules)));
    return describe(
        "in module " + String.join(" or ", modules),
        type ->
            type.getSource().stream()
                .anyMatch(s -> place.matcher(s.getUri().toString()).matches()));
  }

  /**
   * Called or referred to, as in Instant::now. The command line's start is where the one clock
   * comes from.
   */
  static DescribedPredicate<JavaAccess<?>> reads_the_machine_s_clock() {
    return describe(
        "reads the machine's clock",
        call ->
            now_without_a_clock(call)
                || system_clock(call) && !call.getOriginOwner().getPackageName().contains(".cli")
                || calls(call, System.class, "currentTimeMillis")
                || calls(call, Date.class, "<init>") && takes_nothing(call));
  }

  private static boolean now_without_a_clock(JavaAccess<?> call) {
    return call.getTargetOwner().getPackageName().startsWith("java.time")
        && call.getName().equals("now")
        && parameters(call).stream().noneMatch(p -> p.isEquivalentTo(Clock.class));
  }

  private static boolean system_clock(JavaAccess<?> call) {
    return call.getTargetOwner().isEquivalentTo(Clock.class)
        && WAYS_TO_THE_MACHINE_S_CLOCK.contains(call.getName());
  }

  static DescribedPredicate<JavaAccess<?>> seeds_itself() {
    return describe(
        "seeds itself",
        call ->
            calls(call, Random.class, "<init>") && takes_nothing(call)
                || calls(call, SplittableRandom.class, "<init>") && takes_nothing(call)
                || calls(call, ThreadLocalRandom.class, "current")
                || calls(call, Math.class, "random"));
  }

  private static boolean calls(JavaAccess<?> call, Class<?> owner, String name) {
    return call.getTargetOwner().isEquivalentTo(owner) && call.getName().equals(name);
  }

  private static boolean takes_nothing(JavaAccess<?> call) {
    return parameters(call).isEmpty();
  }

  private static List<JavaClass> parameters(JavaAccess<?> call) {
    return call instanceof JavaCodeUnitAccess<?> unit
        ? unit.getTarget().getRawParameterTypes()
        : List.of();
  }

  /** Arrays, and collections that are named by their implementation instead of List, Set or Map. */
  static DescribedPredicate<JavaClass> of_a_mutable_type() {
    return describe(
        "of a mutable type",
        type ->
            type.isArray()
                || type.isAssignableTo(StringBuilder.class)
                || type.isAssignableTo(Date.class)
                || !type.isInterface() && COLLECTIONS.stream().anyMatch(type::isAssignableTo));
  }

  static ArchCondition<JavaClass> stand_in_a_null_marked_package() {
    return new ArchCondition<>("stand in a package that is @NullMarked") {
      @Override
      public void check(JavaClass type, ConditionEvents events) {
        boolean marked = type.getPackage().isAnnotatedWith(NullMarked.class);
        events.add(
            new SimpleConditionEvent(
                type,
                marked,
                "Package %s has no package-info.java with @NullMarked (seen at %s)"
                    .formatted(type.getPackageName(), type.getName())));
      }
    };
  }
}
