package withers.rule;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import withers.custody.Cast;
import withers.finding.Detail;
import withers.finding.NotJudged;
import withers.history.Statement;
import withers.id.OrganisationId;

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
   * @param actor who has to act
   * @param fields for what differs between records, the names of the fields
   * @param detail what only this kind has to tell
   */
  record Holds(Actor actor, List<String> fields, Optional<Detail> detail) implements Judgement {
    public Holds {
      fields = List.copyOf(fields);
    }

    Holds(Statement acting) {
      this(acting, List.of());
    }

    Holds(Actor actor) {
      this(actor, List.of(), Optional.empty());
    }

    Holds(Statement acting, List<String> fields) {
      this(new Actor.OfStatement(acting), fields, Optional.empty());
    }

    Holds(Statement acting, List<String> fields, Detail detail) {
      this(new Actor.OfStatement(acting), fields, Optional.of(detail));
    }

    /** The statement whose source has to act. */
    Optional<Statement> acting() {
      return actor instanceof Actor.OfStatement one ? Optional.of(one.statement) : Optional.empty();
    }
  }

  /** Who has to act. */
  sealed interface Actor {

    /** The organisation whose source states this, on that record of its own. */
    record OfStatement(Statement statement) implements Actor {}

    /** An organisation that has no record of the animal. */
    record WithoutRecord(OrganisationId organisation) implements Actor {}

    /** The organisation. */
    default OrganisationId organisation(Cast cast) {
      return this instanceof WithoutRecord one
          ? one.organisation
          : cast.organisation(((OfStatement) this).statement);
    }
  }
}
