"""What is kept: tables, migrations, queries, feed positions, backups. Computes no load."""
