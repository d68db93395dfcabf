/** The results of the last few different questions, each by a text that stands for all of it. */
export class Kept<T> {
  private readonly answers = new Map<string, T>();

  constructor(private readonly most: number) {}

  get(question: string, answer: () => T): T {
    const found = this.answers.get(question) ?? answer();
    this.answers.delete(question);
    this.answers.set(question, found);
    for (const oldest of this.answers.keys()) {
      if (this.answers.size <= this.most) break;
      this.answers.delete(oldest);
    }
    return found;
  }
}
