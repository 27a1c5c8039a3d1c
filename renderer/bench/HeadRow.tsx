/** Names of the columns of a bench table. */

/** One heading a column; names differ from one another. */
export function HeadRow({ heads }: { readonly heads: readonly string[] }) {
  return (
    <thead>
      <tr>
        {heads.map((head) => (
          <th key={head} scope="col">
            {head}
          </th>
        ))}
      </tr>
    </thead>
  );
}
