package withers.cases;

/**
 * What became of a follow-up: what a run saw of it, what a person settled about it, or what the
 * organisation that acts answered.
 */
public sealed interface CaseEvent permits CaseStep, Settled, Answered {

  /** The follow-up. */
  CaseKey key();
}
