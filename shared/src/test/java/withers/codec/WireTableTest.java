package withers.codec;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.reflect.RecordComponent;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import withers.cases.Answered;
import withers.cases.CaseStep;
import withers.cases.Settled;
import withers.fact.ChipEvent;
import withers.fact.Fact;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class WireTableTest {

  /** Shapes whose fields stand for parts of their components. */
  private static final List<Class<?>> FLATTENED =
      List.of(ChipEvent.class, CaseStep.class, Settled.class, Answered.class, Fact.Supplied.class);

  static Stream<Family<?>> families() {
    return WireTableDump.families().stream();
  }

  static Stream<Constants<?>> constants() {
    return WireTableDump.constants().stream();
  }

  static Stream<Shape<?>> plainShapes() {
    return families()
        .<Shape<?>>flatMap(family -> family.shapes().stream())
        .filter(shape -> !FLATTENED.contains(shape.type()));
  }

  @ParameterizedTest
  @MethodSource("families")
  void has_every_shape_of_a_sealed_type(Family<?> family) {
    Class<?>[] permitted =
        family.type().isSealed()
            ? family.type().getPermittedSubclasses()
            : new Class<?>[] {family.type()};
    assertThat(family.shapes().stream().<Object>map(Shape::type))
        .containsExactlyInAnyOrder((Object[]) permitted);
  }

  @ParameterizedTest
  @MethodSource("constants")
  void has_every_constant_of_an_enum(Constants<?> table) {
    assertThat(table.entries().stream().<Object>map(Constants.Entry::constant))
        .containsExactlyInAnyOrder((Object[]) table.type().getEnumConstants());
  }

  @ParameterizedTest
  @MethodSource("plainShapes")
  void has_every_component_of_a_record_in_its_order(Shape<?> shape) {
    Stream<String> components =
        Arrays.stream(shape.type().getRecordComponents()).map(RecordComponent::getName);
    assertThat(shape.fields(shape.version()).stream().map(Field::name))
        .containsExactlyElementsOf(components.toList());
  }
}
