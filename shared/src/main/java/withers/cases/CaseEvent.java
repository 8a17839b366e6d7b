package withers.cases;

/** What became of a follow-up: what a run saw of it, or what a person settled about it. */
public sealed interface CaseEvent permits CaseStep, Settled {

  /** The follow-up. */
  CaseKey key();
}
