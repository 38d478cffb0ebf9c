// Node 20 lacks Object.groupBy and Map.groupBy, which the grammar validation of the generator calls (build time only).
Object.groupBy ??= (items, key) => {
  const groups = Object.create(null);
  let index = 0;
  for (const item of items) {
    const name = key(item, index++);
    groups[name] ??= [];
    groups[name].push(item);
  }
  return groups;
};
Map.groupBy ??= (items, key) => {
  const groups = new Map();
  let index = 0;
  for (const item of items) {
    const name = key(item, index++);
    const group = groups.get(name);
    if (group) group.push(item);
    else groups.set(name, [item]);
  }
  return groups;
};
