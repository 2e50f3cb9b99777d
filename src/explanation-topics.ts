/** Pages of explanation that are about no kind of issue, by the names of their files, and what each is about. */
export const topics: Readonly<Record<string, string>> = {
  'what-a-hanger-bears': 'How the load is worked out, and what is known of each material.',
};
