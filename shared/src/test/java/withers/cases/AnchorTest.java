package withers.cases;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import withers.chip.ChipNumber;
import withers.id.SourceId;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class AnchorTest {

  private static final Anchor LOW = new Anchor.Chip(ChipNumber.parse("999000000112233"));
  private static final Anchor HIGH = new Anchor.Chip(ChipNumber.parse("999123456789012"));
  private static final Anchor OLDER = new Anchor.Chip(ChipNumber.parse("190000120"));
  private static final Anchor BAY = new Anchor.Source(new SourceId("bay-clinic"));
  private static final Anchor CLIFF = new Anchor.Source(new SourceId("cliff-clinic"));

  @Test
  void chips_come_in_order_of_number_and_before_sources_in_order_of_id() {
    assertThat(Stream.of(CLIFF, OLDER, HIGH, BAY, LOW).sorted().toList())
        .isEqualTo(List.of(LOW, HIGH, OLDER, BAY, CLIFF));
  }

  @Test
  void is_shown_as_its_number_or_its_source() {
    assertThat(LOW.display()).isEqualTo("999000000112233");
    assertThat(BAY.display()).isEqualTo("bay-clinic");
  }
}
