package withers.answered;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import withers.cases.Answered;
import withers.cases.CaseKey;
import withers.cases.Channel;
import withers.cases.Outcome;
import withers.finding.Life;
import withers.finding.RunResult;
import withers.settling.Months;
import withers.world.RandomWorld;

/** The set of answers decides: not how they were put on sheets, nor when those came back. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class LawOfAnswersTest {

  private static final int SEEDS = 60;
  private static final LocalDate FIRST = LocalDate.of(2026, 10, 1);

  @Test
  void neither_order_nor_repetition_nor_splitting_of_sheets_changes_a_run() {
    int resting = 0;
    for (long seed = 0; seed < SEEDS; seed++) {
      String lines = RandomWorld.lines(seed, 12, 0);
      Random random = new Random(seed);
      Months straight = new Months().imported(lines);
      List<Answered> answers = answers(straight.run(FIRST.toString()), random);
      Months mixed = new Months().imported(lines);
      mixed.run(FIRST.toString());

      answers.forEach(straight::answered);
      sheets(answers, random).forEach(sheet -> mixed.answered(sheet.toArray(Answered[]::new)));

      String later = FIRST.plusDays(20L + random.nextInt(40)).toString();
      RunResult expected = straight.run(later);
      assertThat(mixed.run(later)).as("seed " + seed).isEqualTo(expected);
      resting += (int) expected.lives().stream().filter(Life::rests).count();
    }
    assertThat(resting).as("follow-ups that rest").isGreaterThan(SEEDS);
  }

  private static List<Answered> answers(RunResult run, Random random) {
    List<Answered> answers = new ArrayList<>();
    for (CaseKey key : run.opened()) {
      for (int i = random.nextInt(4); i > 0; i--) {
        answers.add(answer(key, random));
      }
    }
    return answers;
  }

  private static Answered answer(CaseKey key, Random random) {
    LocalDate day = FIRST.plusDays(random.nextInt(5));
    return new Answered(
        key,
        day,
        random.nextBoolean() ? Optional.of(FIRST) : Optional.empty(),
        random.nextInt(5) == 0
            ? Optional.empty()
            : Optional.of(Outcome.values()[random.nextInt(Outcome.values().length)]),
        random.nextInt(4) == 0
            ? Optional.of(day.plusDays(random.nextInt(90) + 1))
            : Optional.empty(),
        random.nextInt(3) == 0
            ? Optional.of(Channel.values()[random.nextInt(Channel.values().length)])
            : Optional.empty(),
        random.nextBoolean() ? "front desk" : "");
  }

  /** All of them, some twice, in any order and cut anywhere. */
  private static List<List<Answered>> sheets(List<Answered> answers, Random random) {
    List<Answered> all = new ArrayList<>(answers);
    answers.stream().filter(one -> random.nextInt(3) == 0).forEach(all::add);
    Collections.shuffle(all, random);
    List<List<Answered>> sheets = new ArrayList<>();
    for (int from = 0; from < all.size(); ) {
      int to = Math.min(all.size(), from + 1 + random.nextInt(5));
      sheets.add(all.subList(from, to));
      from = to;
    }
    return sheets;
  }
}
