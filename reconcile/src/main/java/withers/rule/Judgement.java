package withers.rule;

import java.util.List;
import java.util.Set;
import withers.finding.NotJudged;
import withers.history.Statement;

/** What a rule says about one animal. */
sealed interface Judgement {

  Judgement CLEAR = new Clear();

  /** The sentence is not true of it. */
  record Clear() implements Judgement {}

  /**
   * It can't be judged by what is known.
   *
   * @param lacking what is lacking; may be empty when no registry is to be counted
   */
  record Undecided(Set<NotJudged> lacking) implements Judgement {
    public Undecided {
      lacking = Set.copyOf(lacking);
    }
  }

  /**
   * The sentence is true of it.
   *
   * @param acting the statement whose source has to act
   * @param fields for details that differ, the names of the fields
   */
  record Holds(Statement acting, List<String> fields) implements Judgement {
    public Holds {
      fields = List.copyOf(fields);
    }

    Holds(Statement acting) {
      this(acting, List.of());
    }
  }
}
